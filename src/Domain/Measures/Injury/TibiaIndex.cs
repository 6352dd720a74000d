namespace Toepan.Domain.Measures.Injury;

/// <summary>Bending and axial force of a shin bone at the same instant, each as a share of what the bone stands, added; at its upper and its lower end.</summary>
/// <formula>TI = max over t of √(Mx² + My²)/Mc + |Fz|/Fc. Mc = 225 N·m (H3) or 115 N·m (HF); Fc = 35.9 kN (H3) or 22.9 kN (HF); moment and force at the same instant.</formula>
/// <window>The instant of the peak, the earliest on a tie.</window>
/// <edges>A cell without an Fz channel in the package borrows the force of the leg's other cell, and says so; a force channel that is present and unfit is not replaced. Absent where a channel is absent or unfit, or where they do not share interval and start. What is left of the sum, or a clipped channel, gives a lower bound. Not to be mixed with the revised index of the lower-leg risk.</edges>
/// <sources>[r94] 5.2.1.8 and Annex 4; class [j211-1].</sources>
/// <confidence>C2 for the limit, M for critical values and class.</confidence>
/// <checks>The tibia cases and the sine history of the check cases, both dummies.</checks>
public sealed class TibiaIndex : IOccupantMeasure
{
    public IEnumerable<Measure> Reduce(OccupantContext context) =>
        Side.Both.SelectMany(TibiaCell.Both).Select(cell => Reduce(context, cell));

    private static Measure Reduce(OccupantContext context, TibiaCell cell)
    {
        var constants = DummyConstants.Of(context.Occupant.Dummy);
        var borrowed = !cell.Has(context, "FOZ") && cell.Other.Has(context, "FOZ");
        var force = (borrowed ? cell.Other : cell).Ask(context, "FOZ");
        return Sum(context, cell, force, constants.TibiaMomentNm, constants.TibiaForceKn, out var trace)
            .Reduce($"tibia.{cell.Side.Word}.{cell.Word}.index", trace, Peak.Of, borrowed ? $"axial force of the {cell.Other.Word} cell" : null);
    }

    /// <summary>√(Mx² + My²)/Mc + |Fz|/Fc of a cell's moments and a force.</summary>
    internal static ComponentGroup Sum(
        OccupantContext context, TibiaCell cell, Component force, double momentNm, double forceKn, out Trace trace)
    {
        var (x, y) = (cell.Ask(context, "MOX"), cell.Ask(context, "MOY"));
        trace = new Trace(Value, Value, i => x.Known(i) && y.Known(i) && force.Known(i));
        return new(context, x, y, force);

        double Value(int i) => (Math.Sqrt((x[i] * x[i]) + (y[i] * y[i])) / momentNm) + (Math.Abs(force[i]) / forceKn);
    }
}
