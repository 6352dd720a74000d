namespace Toepan.Domain.Analysis.Signals;

/// <summary>
/// Phase score EP: one signal is shifted against the other by up to 20 % of the window; n is the shift at which the normalised
/// cross-correlation of the overlapping parts (their means removed) is largest, the smaller of equals. EP = (0.2·N − n)/(0.2·N),
/// never below 0. ISO/TS 18571 6.3; [iso18571], from memory.
/// </summary>
public static class PhaseScore
{
    public const double LargestShare = 0.2;

    // Correlations closer than this are one: a straight line correlates fully at every shift.
    private const double Same = 1e-12;

    public static double Of(int shift, int count) => Math.Max(0, ((LargestShare * count) - Math.Abs(shift)) / (LargestShare * count));

    /// <summary>By how many samples <paramref name="c"/> is later than <paramref name="t"/>; negative = earlier.</summary>
    public static int Shift(ReadOnlySpan<double> t, ReadOnlySpan<double> c)
    {
        var largest = (int)Math.Floor(LargestShare * t.Length);
        var (best, at) = (Correlation(t, c), 0);
        for (var n = 1; n <= largest; n++)
        {
            foreach (var shift in (ReadOnlySpan<int>)[n, -n])
            {
                var length = t.Length - n;
                var value = Correlation(t.Slice(Math.Max(0, -shift), length), c.Slice(Math.Max(0, shift), length));
                if (value > best + Same)
                {
                    (best, at) = (value, shift);
                }
            }
        }

        return at;
    }

    /// <summary>Correlation coefficient; 0 where either is constant.</summary>
    public static double Correlation(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var (meanA, meanB) = (Mean(a), Mean(b));
        var (aa, bb, ab) = (0.0, 0.0, 0.0);
        for (var i = 0; i < a.Length; i++)
        {
            var (x, y) = (a[i] - meanA, b[i] - meanB);
            aa += x * x;
            bb += y * y;
            ab += x * y;
        }

        return aa > 0 && bb > 0 ? ab / Math.Sqrt(aa * bb) : 0;
    }

    private static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value;
        }

        return sum / values.Length;
    }
}
