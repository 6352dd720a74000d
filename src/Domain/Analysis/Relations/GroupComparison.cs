using MathNet.Numerics.Distributions;

namespace Toepan.Domain.Analysis.Relations;

/// <summary>
/// Do groups differ in a measure? One-way analysis of variance over at least two groups of at least one value, with more values than groups:
/// F = (Σnⱼ(x̄ⱼ − x̄)²/(k − 1))/(ΣΣ(x − x̄ⱼ)²/(n − k)), its probability from the F distribution. Source: textbook; checked against [strd].
/// It asks for about the same scatter in every group; where that fails read the picture, not the probability.
/// </summary>
/// <param name="Groups">Groups, k.</param>
/// <param name="Count">Values, n.</param>
/// <param name="BetweenSquares">Sum of squares between groups, unit².</param>
/// <param name="WithinSquares">Sum of squares within groups, unit².</param>
/// <param name="F">F statistic; +∞ where the values do not differ within groups but between them.</param>
/// <param name="Probability">Chance of as much difference where the groups are alike.</param>
public sealed record GroupComparison(int Groups, int Count, double BetweenSquares, double WithinSquares, double F, double Probability)
{
    /// <summary>Share of the variance that lies between the groups, 0…1 (η²).</summary>
    public double ShareBetween => BetweenSquares + WithinSquares == 0 ? 0 : BetweenSquares / (BetweenSquares + WithinSquares);

    /// <summary>Residual standard deviation √(within/(n − k)).</summary>
    public double ResidualSd => Math.Sqrt(WithinSquares / (Count - Groups));

    /// <summary>The comparison, or null with fewer than two filled groups or no value more than groups.</summary>
    public static GroupComparison? Of(IEnumerable<IReadOnlyList<double>> groups)
    {
        var filled = groups.Where(group => group.Count > 0).ToList();
        var (k, n) = (filled.Count, filled.Sum(group => group.Count));
        if (k < 2 || n <= k)
        {
            return null;
        }

        // Everything from a rough middle, so that large values with small differences keep their digits.
        var rough = Mean([.. filled.SelectMany(group => group)], 0);
        var means = filled.ConvertAll(group => Mean(group, rough));
        var all = filled.Select((group, j) => group.Count * means[j]).Sum() / n;
        var between = filled.Select((group, j) => group.Count * (means[j] - all) * (means[j] - all)).Sum();
        var within = filled.Select((group, j) => Squares(group, rough, means[j])).Sum();
        var f = within == 0 ? (between == 0 ? 0 : double.PositiveInfinity) : between / (k - 1) / (within / (n - k));
        return new(k, n, between, within, f, Above(f, k - 1, n - k));
    }

    // The survival function through the swapped distribution keeps digits where it is small.
    private static double Above(double f, int between, int within) => f switch
    {
        0 => 1,
        double.PositiveInfinity => 0,
        _ => FisherSnedecor.CDF(within, between, 1 / f),
    };

    private static double Mean(IReadOnlyList<double> values, double from)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value - from;
        }

        return sum / values.Count;
    }

    private static double Squares(IReadOnlyList<double> values, double from, double mean)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            var difference = value - from - mean;
            sum += difference * difference;
        }

        return sum;
    }
}
