using MathNet.Numerics.Distributions;
using Toepan.Domain.Analysis.Relations;

namespace Toepan.Domain.Analysis;

/// <summary>
/// Ordinary least-squares line y = intercept + slope·x over at least three points with differing x: slope = Σ(x − x̄)(y − ȳ)/Σ(x − x̄)², residual
/// deviation with n − 2, standard errors from it. Centred before summing. Source: textbook; checked against [strd] (Norris).
/// </summary>
/// <param name="Slope">Unit of y per unit of x.</param>
/// <param name="SlopeError">Standard error of the slope.</param>
/// <param name="Intercept">Unit of y.</param>
/// <param name="InterceptError">Standard error of the intercept.</param>
/// <param name="ResidualSd">Residual standard deviation, n − 2.</param>
/// <param name="RSquared">Share of the variance that the line explains.</param>
public sealed record LeastSquares(double Slope, double SlopeError, double Intercept, double InterceptError, double ResidualSd, double RSquared)
{
    /// <summary>Points, n.</summary>
    public int Count { get; private init; }

    /// <summary>95 % interval of the slope: Student's t with n − 2 degrees of freedom.</summary>
    public Interval SlopeInterval => StudentT.InvCDF(0, 1, Count - 2, 0.5 + (Interval.Confidence / 2)) * SlopeError is var reach ? new(Slope - reach, Slope + reach) : default;

    private const int FewestPoints = 3;

    /// <summary>The line, or null with fewer than three points or where every x is the same.</summary>
    /// <exception cref="ArgumentException">Not as many x as y.</exception>
    public static LeastSquares? Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (x.Length != y.Length)
        {
            throw new ArgumentException($"{x.Length} x for {y.Length} y.", nameof(y));
        }

        if (x.Length < FewestPoints)
        {
            return null;
        }

        var (meanX, meanY) = (Mean(x), Mean(y));
        var (xx, xy, yy) = (0.0, 0.0, 0.0);
        for (var i = 0; i < x.Length; i++)
        {
            var (dx, dy) = (x[i] - meanX, y[i] - meanY);
            (xx, xy, yy) = (xx + (dx * dx), xy + (dx * dy), yy + (dy * dy));
        }

        return xx == 0 ? null : Line(x, y, meanX, meanY, xx, xy / xx, yy);
    }

    private static LeastSquares Line(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double meanX, double meanY, double xx, double slope, double yy)
    {
        var residual = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            var r = y[i] - meanY - (slope * (x[i] - meanX));
            residual += r * r;
        }

        var sd = Math.Sqrt(residual / (x.Length - 2));
        return new(
            slope, sd / Math.Sqrt(xx), meanY - (slope * meanX), sd * Math.Sqrt((1.0 / x.Length) + (meanX * meanX / xx)), sd, yy == 0 ? 1 : 1 - (residual / yy))
        {
            Count = x.Length,
        };
    }

    internal static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value;
        }

        return sum / values.Length;
    }
}
