using MathNet.Numerics.Distributions;

namespace Toepan.Domain.Analysis.Relations;

/// <summary>
/// How closely two measures go together, over at least four pairs in which both vary.
/// Pearson r = Σ(x − x̄)(y − ȳ)/√(Σ(x − x̄)²·Σ(y − ȳ)²); Spearman ρ = Pearson's of the ranks, ties sharing their mean rank.
/// Interval by Fisher's z: tanh(atanh r ± 1.96·s), s² = 1/(n − 3) for Pearson (R. A. Fisher 1921), (1 + ρ²/2)/(n − 3) for Spearman
/// (D. G. Bonett and T. A. Wright, Psychometrika 65 (2000), from memory). Two-sided probability of as much in unrelated measures: Student's t
/// with n − 2 degrees of freedom, t = r·√((n − 2)/(1 − r²)), for Spearman an approximation.
/// </summary>
/// <param name="Count">Pairs.</param>
/// <param name="Value">r or ρ, −1…1.</param>
/// <param name="Interval">95 % interval.</param>
/// <param name="Probability">Chance of a value as far from 0 where the two are unrelated.</param>
public sealed record Correlation(int Count, double Value, Interval Interval, double Probability)
{
    private const int FewestPairs = 4;

    /// <summary>Pearson's r, or null below four pairs or where one measure does not vary.</summary>
    /// <exception cref="ArgumentException">Not as many x as y.</exception>
    public static Correlation? Pearson(ReadOnlySpan<double> x, ReadOnlySpan<double> y) =>
        Coefficient(x, y) is { } r ? Of(x.Length, r, 1) : null;

    /// <summary>Spearman's ρ, or null below four pairs or where one measure does not vary.</summary>
    /// <exception cref="ArgumentException">Not as many x as y.</exception>
    public static Correlation? Spearman(ReadOnlySpan<double> x, ReadOnlySpan<double> y) =>
        Coefficient(Ranks.Of(x), Ranks.Of(y)) is { } rho ? Of(x.Length, rho, 1 + (rho * rho / 2)) : null;

    private static Correlation Of(int count, double r, double variance)
    {
        if (Math.Abs(r) >= 1)
        {
            return new(count, r, new(r, r), 0);
        }

        var (z, reach) = (Math.Atanh(r), Interval.NormalQuantile * Math.Sqrt(variance / (count - 3)));
        var t = Math.Abs(r) * Math.Sqrt((count - 2) / ((1 - r) * (1 + r)));
        return new(count, r, new(Math.Tanh(z - reach), Math.Tanh(z + reach)), 2 * StudentT.CDF(0, 1, count - 2, -t));
    }

    private static double? Coefficient(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (x.Length != y.Length)
        {
            throw new ArgumentException($"{x.Length} x for {y.Length} y.", nameof(y));
        }

        if (x.Length < FewestPairs)
        {
            return null;
        }

        var (meanX, meanY) = (LeastSquares.Mean(x), LeastSquares.Mean(y));
        var (xx, xy, yy) = (0.0, 0.0, 0.0);
        for (var i = 0; i < x.Length; i++)
        {
            var (dx, dy) = (x[i] - meanX, y[i] - meanY);
            (xx, xy, yy) = (xx + (dx * dx), xy + (dx * dy), yy + (dy * dy));
        }

        return xx == 0 || yy == 0 ? null : Math.Clamp(xy / (Math.Sqrt(xx) * Math.Sqrt(yy)), -1, 1);
    }
}
