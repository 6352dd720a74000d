namespace Toepan.Domain.Measures.Injury;

/// <summary>The largest forces at the upper neck: pulling the head off (tension), pushing it down (compression), and across (shear).</summary>
/// <formula>neck.tension = max(Fz, 0); neck.compression = max(−Fz, 0); neck.shear = max |Fx|; kN, upper neck cell, tension positive.</formula>
/// <window>The instant of the peak, the earliest on a tie; none where the force never had that sign.</window>
/// <edges>Never of an absolute value for tension and compression. Absent where its channel is absent or unfit. A channel that clips on the side in question, or is reliable only up to a time, gives a lower bound.</edges>
/// <sources>Peak limits [fmvss208] S6.6, S15.3.6; filter class [part572] 572.36(i), 572.137(m), through [fmvss208] S6.7, S15.3.7; signs [j211-1], [j1733].</sources>
/// <confidence>C1; wording of the signs M.</confidence>
/// <checks>Signed closed forms; unit scaling.</checks>
public sealed class NeckForces : IOccupantMeasure
{
    private const int FilterClass = 1000;

    public IEnumerable<Measure> Reduce(OccupantContext context)
    {
        var z = Component.Ask(context, UpperNeck.Location, "FOZ", FilterClass);
        var x = Component.Ask(context, UpperNeck.Location, "FOX", FilterClass);
        yield return new ComponentGroup(context, z).Reduce("neck.tension", Trace.Signed(z, +1), Peak.Of);
        yield return new ComponentGroup(context, z).Reduce("neck.compression", Trace.Signed(z, -1), Peak.Of);
        yield return new ComponentGroup(context, x).Reduce("neck.shear", Trace.Magnitude(x), Peak.Of);
    }
}
