using Toepan.Domain.Measures;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>
/// e = (p − p₀)/(1 − p₀), never below 0: the risk beyond what the region's curves say of no load at all; p₀ is the largest of the
/// curves' risks at zero load. Rounded to 12 digits before it meets a bound. Design of the scheme; "Settled readings" of methods edition 1.
/// </summary>
internal sealed class ExcessRisk(RiskRule rule, DummyType dummy)
{
    private readonly double zero = rule.Curves.Max(curve => RiskFunctions.Get(curve.Function, dummy).AtZero);

    public double Of(double risk) => Math.Max(0, Digits.Round12((risk - zero) / (1 - zero)));

    /// <summary>The risk that has an excess risk; 1 for +∞.</summary>
    public double Risk(double excess) => double.IsFinite(excess) ? zero + (excess * (1 - zero)) : 1;

    /// <summary>The load at which a curve alone reaches the upper bound of a level; +∞ for very low.</summary>
    public double Load(CurveUse curve, ProtectionLevel level) =>
        level == ProtectionLevel.VeryLow
            ? double.PositiveInfinity
            : RiskFunctions.Get(curve.Function, dummy).Inverse(Risk(rule.Bounds.Largest(level)));

    /// <summary>Risk by one curve; a load below zero counts as none.</summary>
    public double ByCurve(CurveUse curve, double load) => RiskFunctions.Get(curve.Function, dummy).Evaluate(Math.Max(0, load));
}
