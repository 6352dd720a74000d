namespace Toepan.Domain.Measures.Injury;

/// <summary>How far the breastbone was pressed towards the spine.</summary>
/// <formula>max(−Dx, 0), mm; compression is negative in the channel. Class 180 (H3) or 600 (HF).</formula>
/// <window>The instant of the peak, the earliest on a tie; none where the chest was never compressed.</window>
/// <edges>The channel at location 0003 of the chest, else the one at 0000; "else" means that the package has none at 0003. Absent where it is absent or unfit. Clipping in compression, or a channel reliable only up to a time, gives a lower bound.</edges>
/// <sources>Limits [fmvss208] S6.4(b), S15.3.4; filter classes [part572] 572.36(i)(6), 572.137(m)(3)(iii); sign [j211-1].</sources>
/// <confidence>C1; the sign C2.</confidence>
/// <checks>Signed closed forms.</checks>
public sealed class ChestDeflection : IOccupantMeasure
{
    public IEnumerable<Measure> Reduce(OccupantContext context)
    {
        var deflection = Ask(context);
        yield return new ComponentGroup(context, deflection).Reduce("chest.deflection", Trace.Signed(deflection, -1), Peak.Of);
    }

    /// <summary>The deflection channel at the dummy's class.</summary>
    internal static Component Ask(OccupantContext context) => Component.Ask(
        context,
        Component.Exists(context, "CHST0003", "DSX") ? "CHST0003" : "CHST0000",
        "DSX",
        context.Methods.ChestDeflectionClass ?? DummyConstants.Of(context.Occupant.Dummy).DeflectionClass);
}
