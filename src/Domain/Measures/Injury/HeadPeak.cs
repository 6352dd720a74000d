namespace Toepan.Domain.Measures.Injury;

/// <summary>The largest resultant acceleration of the head.</summary>
/// <formula>max √(ax² + ay² + az²), g.</formula>
/// <window>The instant of the peak, the earliest on a tie.</window>
/// <edges>Absent where one of the three axes is absent or unfit, or where they do not share interval and start. A clipped axis, or the axes that are left, give a lower bound.</edges>
/// <sources>Filter class [part572] 572.36(i), 572.137(m). No limit: shown for reading the plot.</sources>
/// <confidence>C1 for the class; the maximum itself is common practice.</confidence>
/// <checks>The three-axis case of the check cases; invariance under rotation of the axes.</checks>
public sealed class HeadPeak : IOccupantMeasure
{
    public IEnumerable<Measure> Reduce(OccupantContext context)
    {
        var (group, trace) = HeadAxes.Of(context);
        yield return group.Reduce("head.peak", trace, Peak.Of);
    }
}
