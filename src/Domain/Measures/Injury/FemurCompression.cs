namespace Toepan.Domain.Measures.Injury;

/// <summary>The largest force along a thigh bone, pushing from the knee towards the hip.</summary>
/// <formula>max(−Fz, 0), kN; compression is negative in the channel.</formula>
/// <window>The instant of the peak, the earliest on a tie; none where the femur was never compressed.</window>
/// <edges>Absent where its channel is absent or unfit. Clipping in compression, or a channel reliable only up to a time, gives a lower bound.</edges>
/// <sources>Limits [fmvss208] S6.5 (2250 lbf = 10.008 kN), S15.3.5; filter class [part572] 572.36(i), 572.137(m); sign [j211-1].</sources>
/// <confidence>C1; the sign M.</confidence>
/// <checks>Signed closed forms.</checks>
public sealed class FemurCompression : IOccupantMeasure
{
    private const int FilterClass = 600;

    public IEnumerable<Measure> Reduce(OccupantContext context)
    {
        foreach (var side in Side.Both)
        {
            var force = Component.Ask(context, $"FEMR{side.Code}00", "FOZ", FilterClass);
            yield return new ComponentGroup(context, force).Reduce($"femur.{side.Word}.compression", Trace.Signed(force, -1), Peak.Of);
        }
    }
}
