using Toepan.Domain.Channels;

namespace Toepan.Domain.Measures.Injury;

/// <summary>The acceleration that was exceeded for 3 ms in all: what remains of a peak when its sharpest tip is set aside.</summary>
/// <formula>a3ms = sup{L : total time with a &gt; L is at least 3 ms}, g; a = √(ax² + ay² + az²), taken as straight lines between samples. Cumulative: the time need not be in one piece. Solved exactly, not by sorting samples.</formula>
/// <window>The first and the last instant at the level, on the straight lines: between them lies all the time above it.</window>
/// <edges>Each component is filtered before the resultant is formed. Absent where one of the three axes is absent or unfit, where they do not share interval and start, or for a record shorter than 3 ms. A clipped axis, or the axes that are left, give a lower bound.</edges>
/// <sources>Chest, cumulative [fmvss208] S6.3, S15.3.3; head [r94] 5.2.1.1; filter classes [part572] 572.36(i), 572.137(m).</sources>
/// <confidence>C1 for the chest; C2 for the head's limit, M for its being cumulative; pelvis class C1 for HF, M for H3.</confidence>
/// <checks>A·cos(π·0.003/(2T)) for a half-sine; two separate pulses; a bisection on random signals.</checks>
public sealed class ThreeMillisecond : IOccupantMeasure
{
    public const double DurationS = 0.003;

    public IEnumerable<Measure> Reduce(OccupantContext context)
    {
        yield return Reduce(context, "head.a3ms", HeadAxes.Location, HeadAxes.FilterClass);
        yield return Reduce(context, "chest.a3ms", "CHST0000", 180);
        yield return Reduce(context, "pelvis.a3ms", "PELV0000", 1000);
    }

    private static Measure Reduce(OccupantContext context, string code, string location, int filterClass)
    {
        var (group, trace) = Accelerations.Of(context, location, filterClass);
        return group.Reduce(code, trace, Of);
    }

    /// <summary>The level of a history, with the instants that bound the time above it; null for a record shorter than 3 ms.</summary>
    internal static Reading? Of(TimeHistory history)
    {
        var needed = DurationS / history.IntervalS;
        if (history.Count - 1 < needed - SampleGrid.Tolerance)
        {
            return null;
        }

        var level = Level(history.Values.Span, needed);
        var (first, last) = Crossings(history.Values.Span, level);
        return new(level, At(history, first), At(history, last));
    }

    // The time above a level falls from sample value to sample value along a straight line, with a step where the history lies flat
    // at a value. So the two neighbouring sample values between which it passes 3 ms are found by halving, and the level between them
    // by proportion. Times are counted in intervals.
    private static double Level(ReadOnlySpan<double> a, double needed)
    {
        var values = a.ToArray().Distinct().Order().ToArray();
        int low = 0, high = values.Length;
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = IntervalsAbove(a, values[middle], orAt: false) >= needed ? (middle, high) : (low, middle);
        }

        var above = IntervalsAbove(a, values[low], orAt: false);
        if (high == values.Length || above < needed)
        {
            return values[low];
        }

        var under = IntervalsAbove(a, values[high], orAt: true);
        return under >= needed - SampleGrid.Tolerance && under > IntervalsAbove(a, values[high], orAt: false)
            ? values[high]
            : values[low] + ((values[high] - values[low]) * (above - needed) / (above - under));
    }

    // Intervals in all during which the history is above a level; flat stretches at the level count where orAt is set.
    private static double IntervalsAbove(ReadOnlySpan<double> a, double level, bool orAt)
    {
        var total = 0.0;
        for (var i = 1; i < a.Length; i++)
        {
            var (low, high) = a[i - 1] < a[i] ? (a[i - 1], a[i]) : (a[i], a[i - 1]);
            if (low > level || (orAt && low == level))
            {
                total++;
            }
            else if (high > level)
            {
                total += (high - level) / (high - low);
            }
        }

        return total;
    }

    private static (double First, double Last) Crossings(ReadOnlySpan<double> a, double level)
    {
        int first = 0, last = a.Length - 1;
        while (first < last && a[first] < level)
        {
            first++;
        }

        while (last > first && a[last] < level)
        {
            last--;
        }

        return (
            first == 0 ? 0 : first - Beyond(a[first], a[first - 1], level),
            last == a.Length - 1 ? last : last + Beyond(a[last], a[last + 1], level));
    }

    // Part of the interval from a sample at or above the level to its neighbour below it.
    private static double Beyond(double inside, double outside, double level) => (inside - level) / (inside - outside);

    private static double At(TimeHistory history, double index) => history.StartS + (index * history.IntervalS);
}
