namespace Toepan.Domain.Analysis.Explore;

/// <summary>One bin: from inclusive to exclusive, the last inclusive.</summary>
public readonly record struct HistogramBin(double From, double To, int Count);

/// <summary>
/// How values are spread. Bin width 2·IQR/∛n (D. Freedman and P. Diaconis, Zeitschrift für Wahrscheinlichkeitstheorie 57 (1981)), then widened to 1, 2 or 5
/// times a power of ten so that bins end on round numbers; at most <see cref="MostBins"/> bins.
/// </summary>
public static class Histogram
{
    public const int MostBins = 60;

    /// <summary>The bins, empty without values; one bin where all are equal.</summary>
    public static IReadOnlyList<HistogramBin> Of(IReadOnlyCollection<double> values)
    {
        if (values.Count == 0)
        {
            return [];
        }

        var sorted = values.Order().ToArray();
        var (least, greatest) = (sorted[0], sorted[^1]);
        if (greatest == least)
        {
            return [new(least, greatest, sorted.Length)];
        }

        var width = Width(sorted);
        var first = Math.Floor((least / width) + Slack);
        var count = (int)Math.Min(MostBins + 2, Math.Floor((greatest / width) + Slack) - first + 1);
        var counts = new int[count];
        foreach (var value in sorted)
        {
            counts[(int)Math.Clamp(Math.Floor((value / width) + Slack) - first, 0, count - 1)]++;
        }

        return [.. counts.Select((held, i) => new HistogramBin((first + i) * width, (first + i + 1) * width, held))];
    }

    private const double Slack = 1e-9;

    private static double Width(double[] sorted)
    {
        var range = sorted[^1] - sorted[0];
        var quartiles = SampleStatistics.Quantile(sorted, 0.75) - SampleStatistics.Quantile(sorted, 0.25);
        var wanted = quartiles > 0 ? 2 * quartiles / Math.Cbrt(sorted.Length) : range / Math.Sqrt(sorted.Length);
        wanted = Math.Max(wanted, range / MostBins);
        var decade = Math.Pow(10, Math.Floor(Math.Log10(wanted)));
        return decade * ((wanted / decade) switch { <= 1 => 1, <= 2 => 2, <= 5 => 5, _ => 10 });
    }
}
