namespace Toepan.Domain.Measures.Injury;

/// <summary>How far a shin bone was pushed rearward in its knee joint.</summary>
/// <formula>max(−Dx, 0), mm; tibia rearward relative to femur is negative in the channel.</formula>
/// <window>The instant of the peak, the earliest on a tie; none where it never slid rearward.</window>
/// <edges>Absent where its channel is absent or unfit. Clipping rearward, or a channel reliable only up to a time, gives a lower bound.</edges>
/// <sources>Limit [r94] 5.2.1.9; class and sign [j211-1].</sources>
/// <confidence>C2 for the limit, M for class and sign.</confidence>
/// <checks>Signed closed forms.</checks>
public sealed class KneeSlide : IOccupantMeasure
{
    private const int FilterClass = 180;

    public IEnumerable<Measure> Reduce(OccupantContext context)
    {
        foreach (var side in Side.Both)
        {
            var slide = Component.Ask(context, $"KNSL{side.Code}00", "DSX", FilterClass);
            yield return new ComponentGroup(context, slide).Reduce($"knee.{side.Word}.slide", Trace.Signed(slide, -1), Peak.Of);
        }
    }
}
