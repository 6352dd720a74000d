using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures.Injury;

/// <summary>The probability of a moderate or worse injury (AIS 2+) of a lower leg: the largest of three, shaft, ankle and plateau.</summary>
/// <formula>Shaft: 1 − exp(−exp((ln RTI − 0.2728)/0.2468)), RTI = max over cells and time of |Fz|/12 kN + √(Mx² + My²)/240 N·m. Ankle: 1/(1 + exp(4.572 − 0.670·F)), F = max(−Fz, 0) of the lower cell, kN. Plateau: 1/(1 + exp(0.5204 − 0.8189·F + 0.0686·75)), F = max(−Fz, 0) of the upper cell, kN, body mass 75 kg. Class 600.</formula>
/// <window>That of the load that drives the risk; its name is kept with the value.</window>
/// <edges>Average man only: for the small-woman dummy no lower-leg risk is published here, and the region is rated on measures. The shaft uses each cell's own force and needs one cell with all its channels; a cell that has them but one of them unfit leaves a lower bound beside the value. Ankle and plateau force are both needed where the procedure's dummy has both cells, else where the package has them.</edges>
/// <sources>[kuppa2001].</sources>
/// <confidence>C2 for coefficients, M for the Weibull form and for the constants of the revised index.</confidence>
/// <checks>The lower-leg cases of the check cases.</checks>
public static class LowerLegRisk
{
    /// <summary>Critical force of the revised tibia index, kN.</summary>
    public const double RevisedForceKn = 12;

    /// <summary>Critical moment of the revised tibia index, N·m.</summary>
    public const double RevisedMomentNm = 240;

    internal static IEnumerable<Measure> Reduce(OccupantContext context) => Side.Both.Select(side => Reduce(context, side));

    private static Measure Reduce(OccupantContext context, Side side)
    {
        var code = $"risk.lowerleg.{side.Word}";
        if (context.Occupant.Dummy != DummyType.H3)
        {
            return new()
            {
                Code = code,
                Unit = MeasureCatalogue.Get(code).Unit,
                Position = context.Occupant.Position,
                Absent = "no lower-leg risk is published here for the small-woman dummy; the region is rated on its measures",
            };
        }

        List<RiskInput> inputs = [Input("shaft", RiskFunctions.Shaft, Shaft(context, side))];
        AddForce("ankle", RiskFunctions.Ankle, TibiaCell.Lower(side));
        AddForce("plateau", RiskFunctions.Plateau, TibiaCell.Upper(side));
        return RegionRisk.Of(code, inputs);

        RiskInput Input(string name, string function, Measure load) => new(name, RiskFunctions.Get(function, DummyType.H3), load);

        void AddForce(string name, string function, TibiaCell cell)
        {
            if (context.BothTibiaCells || cell.Has(context, "FOZ"))
            {
                inputs.Add(Input(name, function, TibiaCompression.OfCell(context, cell, name)));
            }
        }
    }

    /// <summary>The revised tibia index of a leg: the largest over the cells that have all their channels.</summary>
    private static Measure Shaft(OccupantContext context, Side side)
    {
        var cells = TibiaCell.Both(side).Where(cell => Channels.All(channel => cell.Has(context, channel))).ToList();
        var each = (cells.Count == 0 ? TibiaCell.Both(side) : cells).Select(cell => RevisedIndex(context, cell)).ToList();
        var usable = each.Where(m => m.Value is not null).ToList();
        var largest = Largest.Of(each);
        return usable.Count is 0 || usable.Count == each.Count
            ? largest
            : usable.MaxBy(m => m.Value)! with { Bounds = largest.Bounds };
    }

    private static readonly string[] Channels = ["MOX", "MOY", "FOZ"];

    private static Measure RevisedIndex(OccupantContext context, TibiaCell cell) =>
        TibiaIndex.Sum(context, cell, cell.Ask(context, "FOZ"), RevisedMomentNm, RevisedForceKn, out var trace)
            .Reduce($"shaft.{cell.Word}", "", trace, Peak.Of);
}
