namespace Toepan.Domain.Channels;

/// <summary>Fewer points for a plot, no peak lost.</summary>
public static class PlotPoints
{
    /// <summary>
    /// Indices of the samples to draw, ascending: the record is cut into points ÷ 2 stretches of nearly equal length, and of each the first
    /// least and the first greatest sample are kept (one, where they are the same). All indices where there are no more than
    /// <paramref name="points"/> samples. A NaN is neither least nor greatest, unless a stretch has nothing else.
    /// </summary>
    /// <param name="points">At most this many, at least 2.</param>
    public static int[] MinMax(ReadOnlySpan<double> samples, int points)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 2);
        if (samples.Length <= points)
        {
            return [.. Enumerable.Range(0, samples.Length)];
        }

        var stretches = points / 2;
        var kept = new List<int>(points);
        for (var stretch = 0; stretch < stretches; stretch++)
        {
            var from = (int)((long)samples.Length * stretch / stretches);
            var to = (int)((long)samples.Length * (stretch + 1) / stretches);
            var (least, greatest) = Extremes(samples, from, to);
            kept.Add(Math.Min(least, greatest));
            if (least != greatest)
            {
                kept.Add(Math.Max(least, greatest));
            }
        }

        return [.. kept];
    }

    private static (int Least, int Greatest) Extremes(ReadOnlySpan<double> samples, int from, int to)
    {
        var (least, greatest) = (from, from);
        for (var i = from + 1; i < to; i++)
        {
            if (samples[i] < samples[least] || double.IsNaN(samples[least]))
            {
                least = i;
            }

            if (samples[i] > samples[greatest] || double.IsNaN(samples[greatest]))
            {
                greatest = i;
            }
        }

        return (least, greatest);
    }
}
