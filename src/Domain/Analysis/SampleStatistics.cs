namespace Toepan.Domain.Analysis;

/// <summary>
/// Count, mean, standard deviation and quartiles of a set of finite values, in the values' unit.
/// Mean by two passes (the mean, then the mean of what is left), deviation about it with n − 1; quartiles by linear interpolation
/// at h = (n − 1)·p of the sorted values. Source: R. J. Hyndman and Y. Fan, "Sample quantiles in statistical packages", The American
/// Statistician 50 (1996), type 7.
/// </summary>
/// <param name="Count">Number of values.</param>
/// <param name="Mean">Null without values.</param>
/// <param name="Sd">Null below two values.</param>
public sealed record SampleStatistics(
    int Count, double? Mean, double? Sd, double? Minimum, double? LowerQuartile, double? Median, double? UpperQuartile, double? Maximum)
{
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static SampleStatistics Of(IReadOnlyCollection<double> values)
    {
        if (values.Any(value => !double.IsFinite(value)))
        {
            throw new ArgumentException("Statistics need finite values.", nameof(values));
        }

        if (values.Count == 0)
        {
            return new(0, null, null, null, null, null, null, null);
        }

        var sorted = values.ToArray();
        Array.Sort(sorted);
        var rough = Sum(sorted, 0) / sorted.Length;
        var mean = rough + (Sum(sorted, rough) / sorted.Length);
        return new(
            sorted.Length, mean, Deviation(sorted, mean), sorted[0], Quantile(sorted, 0.25), Quantile(sorted, 0.5), Quantile(sorted, 0.75),
            sorted[^1]);
    }

    /// <summary>Quantile of ascending values at probability 0 ≤ p ≤ 1, type 7.</summary>
    public static double Quantile(ReadOnlySpan<double> sorted, double p)
    {
        var h = (sorted.Length - 1) * p;
        var below = (int)Math.Floor(h);
        return below + 1 < sorted.Length ? sorted[below] + ((h - below) * (sorted[below + 1] - sorted[below])) : sorted[below];
    }

    private static double Sum(double[] values, double offset)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value - offset;
        }

        return sum;
    }

    private static double? Deviation(double[] values, double mean)
    {
        if (values.Length < 2)
        {
            return null;
        }

        var squares = 0.0;
        foreach (var value in values)
        {
            squares += (value - mean) * (value - mean);
        }

        return Math.Sqrt(squares / (values.Length - 1));
    }
}
