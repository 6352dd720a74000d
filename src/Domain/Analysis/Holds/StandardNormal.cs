using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Toepan.Domain.Analysis.Holds;

/// <summary>The standard normal distribution.</summary>
internal static class StandardNormal
{
    /// <summary>Φ(z).</summary>
    public static double Below(double z) => 0.5 * SpecialFunctions.Erfc(-z / Constants.Sqrt2);

    /// <summary>Φ⁻¹(p), 0 &lt; p &lt; 1; some eight digits, enough for a draw.</summary>
    public static double Quantile(double p) => Normal.InvCDF(0, 1, p);
}
