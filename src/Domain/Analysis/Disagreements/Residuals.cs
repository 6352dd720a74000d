namespace Toepan.Domain.Analysis.Disagreements;

/// <summary>
/// How far each point lies off the least-squares line of the others' kind: internally studentized residuals rᵢ/(s·√(1 − hᵢ)), hᵢ = 1/n + (xᵢ − x̄)²/Σ(x − x̄)².
/// Source: textbook (R. D. Cook and S. Weisberg, Residuals and Influence in Regression, 1982, from memory).
/// </summary>
public static class Residuals
{
    /// <summary>Fewer points make no expectation worth contradicting.</summary>
    public const int LeastPoints = 8;

    /// <summary>By point, with the line; null with fewer than eight points, one x, or points that all lie on the line.</summary>
    public static (LeastSquares Line, IReadOnlyList<double> Studentized)? Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (x.Length < LeastPoints || LeastSquares.Of(x, y) is not { ResidualSd: > 0 } line)
        {
            return null;
        }

        var mean = LeastSquares.Mean(x);
        var squares = 0.0;
        foreach (var value in x)
        {
            squares += (value - mean) * (value - mean);
        }

        var residuals = new double[x.Length];
        for (var i = 0; i < residuals.Length; i++)
        {
            var leverage = (1.0 / x.Length) + ((x[i] - mean) * (x[i] - mean) / squares);
            var residual = y[i] - line.Intercept - (line.Slope * x[i]);
            residuals[i] = leverage >= 1 ? 0 : residual / (line.ResidualSd * Math.Sqrt(1 - leverage));
        }

        return (line, residuals);
    }
}
