using Toepan.Domain.Measures;

namespace Toepan.Domain.Analysis.Repeats;

/// <summary>
/// Difference, mean, s (n − 1) and CV = s/|mean| of one measure over repeated runs. CV is not given below two values, where the mean
/// is zero, or where |mean| is under 1 % of the measure's limit. Methods edition 1, "Repeats"; [sae840201] and others.
/// </summary>
public static class RepeatStatistics
{
    /// <summary>A mean below this share of the limit is too near zero for a CV.</summary>
    public const double LeastMeanOverLimit = 0.01;

    /// <param name="limit">The limit or bound the measure is held against, in its unit; null where there is none.</param>
    public static RepeatedMeasure Of(string code, int? position, string unit, IReadOnlyList<double?> values, double? limit)
    {
        var statistics = SampleStatistics.Of([.. values.OfType<double>()]);
        var noCv = NoCv(statistics, limit);
        var cv = noCv is null ? statistics.Sd / Math.Abs(statistics.Mean!.Value) : null;
        return new(
            code, position, unit, values, [.. values.Select(value => Digits.Round12(value - values[0]))], statistics.Count,
            Digits.Round12(statistics.Mean), Digits.Round12(statistics.Sd), Digits.Round12(cv), noCv);
    }

    private static string? NoCv(SampleStatistics statistics, double? limit) => statistics switch
    {
        { Count: < 2 } => "fewer than two values",
        { Mean: 0 } => "the mean is zero",
        { Mean: { } mean } when Math.Abs(mean) < LeastMeanOverLimit * limit => "the mean is under 1 % of the limit",
        _ => null,
    };

    /// <summary>Pooled CV of a measure over repeat groups: √(Σ(nᵢ − 1)·CVᵢ² / Σ(nᵢ − 1)); null without a group. The same rule pools standard deviations.</summary>
    public static double? Pooled(IEnumerable<(int Count, double Scatter)> groups)
    {
        var (sum, weight) = (0.0, 0);
        foreach (var (count, scatter) in groups)
        {
            sum += (count - 1) * scatter * scatter;
            weight += count - 1;
        }

        return weight == 0 ? null : Digits.Round12(Math.Sqrt(sum / weight));
    }
}
