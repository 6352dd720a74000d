namespace Toepan.Domain.Analysis.Relations;

/// <summary>
/// A line that a few wild values do not move: slope = median of the slopes of all pairs with differing x, intercept = median y − slope·median x.
/// 95 % interval of the slope from the ranks of those slopes (P. K. Sen, Journal of the American Statistical Association 63 (1968)), its
/// variance corrected for ties in x and y, the ranks rounded to the nearest pair as scipy.stats.theilslopes does (from memory).
/// At least three points of at least two x.
/// </summary>
/// <param name="Slope">Unit of y per unit of x.</param>
/// <param name="Intercept">Unit of y.</param>
/// <param name="SlopeInterval">95 % interval of the slope.</param>
public sealed record TheilSen(double Slope, double Intercept, Interval SlopeInterval)
{
    private const int FewestPoints = 3;

    /// <summary>The line, or null with fewer than three points or where every x is the same.</summary>
    /// <exception cref="ArgumentException">Not as many x as y.</exception>
    public static TheilSen? Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (x.Length != y.Length)
        {
            throw new ArgumentException($"{x.Length} x for {y.Length} y.", nameof(y));
        }

        if (x.Length < FewestPoints)
        {
            return null;
        }

        var slopes = PairSlopes.Of(x, y);
        if (slopes.Count == 0)
        {
            return null;
        }

        var slope = Median(slopes);
        return new(slope, Median(y) - (slope * Median(x)), Reach(slopes, x, y));
    }

    private static Interval Reach(PairSlopes slopes, ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double n = x.Length;
        var variance = ((n * (n - 1) * ((2 * n) + 5)) - Ties(x) - Ties(y)) / 18;
        var reach = Interval.NormalQuantile * Math.Sqrt(Math.Max(0, variance));
        var upper = (long)Math.Round((slopes.Count + reach) / 2, MidpointRounding.ToEven);
        var lower = (long)Math.Round((slopes.Count - reach) / 2, MidpointRounding.ToEven) - 1;
        return new(slopes.At(Math.Max(0, lower)), slopes.At(Math.Min(slopes.Count - 1, upper)));
    }

    // Σ k(k − 1)(2k + 5) over the groups of equal values.
    private static double Ties(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        Array.Sort(sorted);
        var sum = 0.0;
        for (var from = 0; from < sorted.Length;)
        {
            var to = from;
            while (to < sorted.Length && sorted[to] == sorted[from])
            {
                to++;
            }

            double k = to - from;
            sum += k * (k - 1) * ((2 * k) + 5);
            from = to;
        }

        return sum;
    }

    private static double Median(PairSlopes slopes) =>
        slopes.Count % 2 == 1 ? slopes.At(slopes.Count / 2) : (slopes.At((slopes.Count / 2) - 1) + slopes.At(slopes.Count / 2)) / 2;

    private static double Median(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        Array.Sort(sorted);
        return SampleStatistics.Quantile(sorted, 0.5);
    }
}
