namespace Toepan.Domain.Analysis.Disagreements;

/// <summary>
/// The outer fences of a set of values: Q1 − 3·IQR and Q3 + 3·IQR, quartiles of type 7. Source: J. W. Tukey, Exploratory Data Analysis (1977), from memory.
/// </summary>
/// <param name="Low">Below it a value is far out.</param>
/// <param name="High">Above it a value is far out.</param>
/// <param name="Median">Median.</param>
/// <param name="Spread">Interquartile range.</param>
public sealed record Fences(double Low, double High, double Median, double Spread)
{
    /// <summary>Below so many values nothing is called far out.</summary>
    public const int LeastValues = 8;
    private const double Outer = 3;

    /// <summary>Null with fewer than eight values or where the middle half does not vary.</summary>
    public static Fences? Of(IReadOnlyCollection<double> values)
    {
        if (values.Count < LeastValues)
        {
            return null;
        }

        var sorted = values.Order().ToArray();
        var (lower, upper) = (SampleStatistics.Quantile(sorted, 0.25), SampleStatistics.Quantile(sorted, 0.75));
        var spread = upper - lower;
        return spread > 0 ? new(lower - (Outer * spread), upper + (Outer * spread), SampleStatistics.Quantile(sorted, 0.5), spread) : null;
    }

    /// <summary>Whether a value lies outside; on a fence is inside.</summary>
    public bool Excludes(double value) => value < Low || value > High;

    /// <summary>Interquartile ranges from the median.</summary>
    public double Distance(double value) => Math.Abs(value - Median) / Spread;
}
