using MathNet.Numerics;

namespace Toepan.Domain.Measures.Injury;

/// <summary>
/// The shape of an injury risk curve: a load, never negative, to a probability that never falls as the load grows. The unit of
/// the load is the curve's own and stands with the <see cref="RiskFunction"/> that uses it.
/// </summary>
public abstract record RiskCurve
{
    /// <summary>Probability 0 … 1 at a load ≥ 0.</summary>
    public abstract double At(double load);

    /// <summary>The load at which a probability is reached; 0 where it is reached without load, +∞ for 1.</summary>
    public abstract double Load(double probability);
}

/// <summary>p = Φ((ln x − μ)/σ), Φ the standard normal distribution; p = 0 at x = 0.</summary>
public sealed record LogNormalCurve(double Mu, double Sigma) : RiskCurve
{
    public override double At(double load) =>
        load <= 0 ? 0 : Phi((Math.Log(load) - Mu) / Sigma);

    public override double Load(double probability) => probability switch
    {
        <= 0 => 0,
        >= 1 => double.PositiveInfinity,
        _ => Math.Exp(Mu + (Sigma * NormalQuantile(probability))),
    };

    private static double Phi(double z) => 0.5 * SpecialFunctions.Erfc(-z / Constants.Sqrt2);

    // ErfcInv gives some eight digits (seen against scipy); two Newton steps on Φ, whose slope is the normal density, give the rest.
    private static double NormalQuantile(double probability)
    {
        var z = -Constants.Sqrt2 * SpecialFunctions.ErfcInv(2 * probability);
        for (var step = 0; step < 2; step++)
        {
            z -= (Phi(z) - probability) / (Constants.InvSqrt2Pi * Math.Exp(-0.5 * z * z));
        }

        return z;
    }
}

/// <summary>p = 1/(1 + exp(a − b·xᵏ)).</summary>
public sealed record LogisticCurve(double A, double B, double Power = 1) : RiskCurve
{
    public override double At(double load) => 1 / (1 + Math.Exp(A - (B * (Power == 1 ? load : Math.Pow(load, Power)))));

    public override double Load(double probability)
    {
        if (probability >= 1)
        {
            return double.PositiveInfinity;
        }

        var scaled = probability <= 0 ? 0 : (A + Math.Log(probability / (1 - probability))) / B;
        return scaled <= 0 ? 0 : Math.Pow(scaled, 1 / Power);
    }
}

/// <summary>p = 1 − exp(−exp((ln x − μ)/s)), a Weibull curve; p = 0 at x = 0.</summary>
public sealed record WeibullCurve(double Mu, double Scale) : RiskCurve
{
    // Beyond e^−40 nothing is left of 1 − p in a double.
    private const double Saturated = 20;

    public override double At(double load)
    {
        if (load <= 0)
        {
            return 0;
        }

        // 1 − e^−h as 2·sinh(h/2)·e^(−h/2) keeps the digits of small probabilities (MathNet's Expm1 loses them near h = 0.05).
        var half = Math.Exp((Math.Log(load) - Mu) / Scale) / 2;
        return half > Saturated ? 1 : 2 * Math.Sinh(half) * Math.Exp(-half);
    }

    public override double Load(double probability) => probability switch
    {
        <= 0 => 0,
        >= 1 => double.PositiveInfinity,
        _ => Math.Exp(Mu + (Scale * Math.Log(-SpecialFunctions.Log1p(-probability)))),
    };
}
