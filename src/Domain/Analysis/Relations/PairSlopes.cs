namespace Toepan.Domain.Analysis.Relations;

/// <summary>
/// The slopes of all pairs of points with differing x, by rank. Up to <see cref="FewEnough"/> points they are all formed and sorted. Of more, a rank is
/// found between two slopes: a pair's slope is below b exactly where its points change places when ordered by y − b·x, so that changed places
/// are counted in n·log n steps, and only the pairs of the last narrow strip are formed.
/// </summary>
internal sealed class PairSlopes
{
    private const int FewEnough = 600;
    private const int StripPairs = 60_000;
    private const int Halvings = 70;

    private readonly double[] x;
    private readonly double[] y;
    private readonly double[]? sorted;
    private readonly Dictionary<long, double> found = [];

    private PairSlopes(double[] x, double[] y)
    {
        (this.x, this.y) = (x, y);
        Count = Pairs(x);
        sorted = x.Length <= FewEnough ? All(x, y) : null;
    }

    public long Count { get; }

    public static PairSlopes Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var points = new (double X, double Y)[x.Length];
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = (x[i], y[i]);
        }

        Array.Sort(points);
        return new(Array.ConvertAll(points, point => point.X), Array.ConvertAll(points, point => point.Y));
    }

    /// <summary>The slope of rank 0…Count − 1, ascending.</summary>
    public double At(long rank)
    {
        if (sorted is not null)
        {
            return sorted[rank];
        }

        if (!found.TryGetValue(rank, out var slope))
        {
            found[rank] = slope = Search(rank);
        }

        return slope;
    }

    private double Search(long rank)
    {
        var (low, high) = Bracket();
        var (below, upTo) = (0L, Count);
        for (var i = 0; i < Halvings && upTo - below > StripPairs; i++)
        {
            var middle = low + ((high - low) / 2);
            if (middle <= low || middle >= high)
            {
                break;
            }

            var count = SlopeOrder.Below(x, y, middle);
            (low, high, below, upTo) = count <= rank ? (middle, high, count, upTo) : (low, middle, below, count);
        }

        if (upTo - below > StripPairs)
        {
            return low + ((high - low) / 2); // So many equal slopes that no strip is narrow enough: they are this one.
        }

        var strip = SlopeOrder.Between(x, y, low, high);
        strip.Sort();
        return strip[(int)Math.Clamp(rank - below, 0, strip.Count - 1)];
    }

    // Steeper than any pair, both ways: neighbours in x have the steepest.
    private (double Low, double High) Bracket()
    {
        var (least, greatest) = (y.Min(), y.Max());
        var gap = double.PositiveInfinity;
        for (var i = 1; i < x.Length; i++)
        {
            gap = x[i] > x[i - 1] ? Math.Min(gap, x[i] - x[i - 1]) : gap;
        }

        var steepest = ((greatest - least) / gap) + 1;
        return (-steepest, steepest);
    }

    private static long Pairs(double[] x)
    {
        long equal = 0;
        for (int from = 0, to; from < x.Length; from = to)
        {
            for (to = from; to < x.Length && x[to] == x[from]; to++)
            {
            }

            equal += (long)(to - from) * (to - from - 1) / 2;
        }

        return ((long)x.Length * (x.Length - 1) / 2) - equal;
    }

    private static double[] All(double[] x, double[] y)
    {
        var slopes = new List<double>(x.Length * x.Length / 2);
        for (var i = 0; i < x.Length; i++)
        {
            for (var j = i + 1; j < x.Length; j++)
            {
                if (x[j] > x[i])
                {
                    slopes.Add((y[j] - y[i]) / (x[j] - x[i]));
                }
            }
        }

        slopes.Sort();
        return [.. slopes];
    }
}
