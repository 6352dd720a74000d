namespace Toepan.Domain.Measures.Injury;

/// <summary>The largest bending moments where the head sits on the neck: chin to chest (flexion) and head thrown back (extension).</summary>
/// <formula>My_oc = My − d·Fx with d = 0.01778 m, Fx in N; neck.flexion = max(My_oc, 0); neck.extension = max(−My_oc, 0); N·m.</formula>
/// <window>The instant of the peak, the earliest on a tie; none where the moment never had that sign.</window>
/// <edges>Absent where moment or shear force is absent or unfit, or where they do not share interval and start. Clipping gives a lower bound only at instants where neither term can hide a smaller moment.</edges>
/// <sources>Offset [part572] 572.133(b)(1)(ii); 572.33(b) prints 0.058 ft for the average man, a rounding 0.57 % less; filter class [fmvss208] S6.6(a)(1), S15.3.6(a)(1). No limit is used in edition 1.</sources>
/// <confidence>C1; the offset of the average man in SI M.</confidence>
/// <checks>The six neck cases of the check cases.</checks>
public sealed class NeckMoments : IOccupantMeasure
{
    private const int FilterClass = 600;

    public IEnumerable<Measure> Reduce(OccupantContext context)
    {
        var neck = new UpperNeck(context, FilterClass);
        var group = new ComponentGroup(context, neck.Components);
        yield return group.Reduce("neck.flexion", neck.Towards(+1), Peak.Of);
        yield return group.Reduce("neck.extension", neck.Towards(-1), Peak.Of);
    }
}
