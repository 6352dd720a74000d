namespace Toepan.Domain.Channels;

/// <summary>
/// Fewer points for a plot: samples are put into equal buckets and of each the least and the greatest are kept, with their own times, in order
/// of time. No peak is lost and none is moved; what lies between is. For drawing only, no measure sees it.
/// </summary>
public static class PlotReduction
{
    /// <summary>
    /// Indices to draw, ascending, at most <paramref name="points"/> (2 at least) of them; all where there are no more. Samples that are not finite
    /// are passed over, but a bucket that holds nothing else keeps its first, so that a gap stays a gap.
    /// </summary>
    public static int[] Indices(ReadOnlySpan<double> values, int points)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 2);
        if (values.Length <= points)
        {
            return Enumerable.Range(0, values.Length).ToArray();
        }

        var buckets = points / 2;
        var kept = new List<int>(points);
        for (var bucket = 0; bucket < buckets; bucket++)
        {
            var from = (int)((long)bucket * values.Length / buckets);
            var to = (int)((long)(bucket + 1) * values.Length / buckets);
            Keep(values, from, to, kept);
        }

        return kept.ToArray();
    }

    private static void Keep(ReadOnlySpan<double> values, int from, int to, List<int> kept)
    {
        var (least, greatest) = (-1, -1);
        for (var i = from; i < to; i++)
        {
            if (double.IsFinite(values[i]))
            {
                least = least < 0 || values[i] < values[least] ? i : least;
                greatest = greatest < 0 || values[i] > values[greatest] ? i : greatest;
            }
        }

        if (least < 0)
        {
            kept.Add(from);
            return;
        }

        kept.Add(Math.Min(least, greatest));
        if (least != greatest)
        {
            kept.Add(Math.Max(least, greatest));
        }
    }
}
