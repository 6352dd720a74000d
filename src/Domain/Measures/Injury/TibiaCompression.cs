namespace Toepan.Domain.Measures.Injury;

/// <summary>The largest force along a shin bone, pushing from the foot towards the knee, at either of its load cells.</summary>
/// <formula>The larger of max(−Fz, 0) over the leg's cells present, kN; compression is negative in the channel.</formula>
/// <window>The instant of the peak, the earliest on a tie, and the cell it was at; none where the tibia was never compressed.</window>
/// <edges>A cell without an Fz channel in the package is left out; one whose channel is present and unfit makes the measure absent, and the other cell gives a lower bound. Clipping in compression gives a lower bound.</edges>
/// <sources>Limit [r94] 5.2.1.7; class and sign [j211-1].</sources>
/// <confidence>C2 for the limit, M for class and sign.</confidence>
/// <checks>Signed closed forms.</checks>
public sealed class TibiaCompression : IOccupantMeasure
{
    public IEnumerable<Measure> Reduce(OccupantContext context) => Side.Both.Select(side => Reduce(context, side));

    private static Measure Reduce(OccupantContext context, Side side)
    {
        var code = $"tibia.{side.Word}.compression";
        var cells = TibiaCell.Both(side).Where(cell => cell.Has(context, "FOZ")).ToList();
        var each = (cells.Count == 0 ? TibiaCell.Both(side) : cells).Select(cell => OfCell(context, cell, code)).ToList();
        return Largest.Of(each);
    }

    /// <summary>max(−Fz, 0) at one cell.</summary>
    internal static Measure OfCell(OccupantContext context, TibiaCell cell, string code)
    {
        var force = cell.Ask(context, "FOZ");
        return new ComponentGroup(context, force).Reduce(code, "kN", Trace.Signed(force, -1), Peak.Of, $"{cell.Word} cell");
    }
}
