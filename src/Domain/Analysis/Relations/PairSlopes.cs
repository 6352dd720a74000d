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
    private const int SampleSize = 30_000;
    private const double SampleSlack = 2; // Four standard deviations of a rank in the sample, √(m/4) each.
    private const int Halvings = 70;

    private readonly double[] x;
    private readonly double[] y;
    private readonly double[]? sorted;
    private readonly double[] sample = [];
    private long stripFrom;
    private IReadOnlyList<double>? strip;

    private PairSlopes(double[] x, double[] y)
    {
        (this.x, this.y) = (x, y);
        Count = Pairs(x);
        if (x.Length <= FewEnough)
        {
            sorted = All(x, y);
        }
        else
        {
            sample = Sample();
        }
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

        if (strip is null || rank < stripFrom || rank >= stripFrom + strip.Count)
        {
            (stripFrom, strip) = Strip(rank);
        }

        return strip[(int)(rank - stripFrom)];
    }

    // The sorted slopes about a rank, and the rank of the first.
    private (long From, IReadOnlyList<double> Slopes) Strip(long rank)
    {
        var bracket = Guess(rank);
        for (var i = 0; i < Halvings && bracket.Pairs > StripPairs; i++)
        {
            var middle = bracket.Low + ((bracket.High - bracket.Low) / 2);
            if (middle <= bracket.Low || middle >= bracket.High)
            {
                break;
            }

            var count = SlopeOrder.Below(x, y, middle);
            bracket = count <= rank ? bracket with { Low = middle, Below = count } : bracket with { High = middle, UpTo = count };
        }

        if (bracket.Pairs > StripPairs)
        {
            return (rank, [bracket.Low + ((bracket.High - bracket.Low) / 2)]); // So many equal slopes that no strip is narrow enough: they are this one.
        }

        var slopes = SlopeOrder.Between(x, y, bracket.Low, bracket.High);
        slopes.Sort();
        return (Math.Clamp(bracket.Below, rank - slopes.Count + 1, rank), slopes);
    }

    // Where the rank lies by a sample of pairs, if counting bears it out; else from the steepest way down to the steepest way up.
    private Bracket Guess(long rank)
    {
        var place = (double)rank / Count * sample.Length;
        var slack = SampleSlack * Math.Sqrt(sample.Length);
        var (low, high) = (sample[(int)Math.Max(0, place - slack)], sample[(int)Math.Min(sample.Length - 1, place + slack)]);
        if (low < high)
        {
            var (below, upTo) = (SlopeOrder.Below(x, y, low), SlopeOrder.Below(x, y, high));
            if (below <= rank && rank < upTo)
            {
                return new(low, high, below, upTo);
            }
        }

        var steepest = Steepest();
        return new(-steepest, steepest, 0, Count);
    }

    // Seeded draws of pairs: Numerical Recipes' 32-bit generator, so that the same points are always searched the same way.
    private double[] Sample()
    {
        var slopes = new List<double>(SampleSize);
        var state = 20310314u;
        for (var i = 0; i < 2 * SampleSize && slopes.Count < SampleSize; i++)
        {
            var (one, other) = (Draw(ref state), Draw(ref state));
            if (x[one] != x[other])
            {
                slopes.Add((y[other] - y[one]) / (x[other] - x[one]));
            }
        }

        slopes.Sort();
        return slopes.Count > 0 ? [.. slopes] : [0, 0];
    }

    private int Draw(ref uint state)
    {
        state = unchecked((1664525u * state) + 1013904223u);
        return (int)((ulong)state * (ulong)x.Length >> 32);
    }

    // Steeper than any pair: the whole height over the smallest step.
    private double Steepest()
    {
        var (least, greatest) = (y.Min(), y.Max());
        var gap = double.PositiveInfinity;
        for (var i = 1; i < x.Length; i++)
        {
            gap = x[i] > x[i - 1] ? Math.Min(gap, x[i] - x[i - 1]) : gap;
        }

        return ((greatest - least) / gap) + 1;
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

    private readonly record struct Bracket(double Low, double High, long Below, long UpTo)
    {
        public long Pairs => UpTo - Below;
    }
}
