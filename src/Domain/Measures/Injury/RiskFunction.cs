using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures.Injury;

/// <summary>A published injury risk function for one dummy: a load to the probability of an injury of at least an AIS severity.</summary>
/// <param name="Name">Name a rating scheme refers to it by, e.g. <c>neck.nij</c>; the same for both dummies.</param>
/// <param name="Dummy">Dummy the coefficients are for.</param>
/// <param name="Ais">Severity: injuries of this level of the Abbreviated Injury Scale or higher.</param>
/// <param name="Load">What the load is, in words.</param>
/// <param name="Unit">Unit of the load; empty for a dimensionless one.</param>
/// <param name="Formula">The curve as printed, with its coefficients.</param>
/// <param name="Curve">The curve itself.</param>
/// <param name="Source">Key in docs/sources.md.</param>
/// <param name="Confidence">Confidence mark of docs/sources.md.</param>
public sealed record RiskFunction(
    string Name, DummyType Dummy, int Ais, string Load, string Unit, string Formula, RiskCurve Curve, string Source, string Confidence)
{
    /// <summary>Risk at zero load: what the curve says of nobody being loaded at all.</summary>
    public double AtZero { get; } = Digits.Round12(Curve.At(0));

    /// <summary>Probability at a load, rounded to 12 significant digits.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The load is negative or not a number.</exception>
    public double Evaluate(double load)
    {
        if (!(load >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(load), load, $"{Name} takes a load of at least 0 {Unit}.");
        }

        return Digits.Round12(Curve.At(load));
    }

    /// <summary>The load at which the probability is reached: 0 at or below <see cref="AtZero"/>, +∞ at 1. Not rounded, so that margins keep their digits.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a probability.</exception>
    public double Inverse(double probability)
    {
        if (!(probability >= 0 && probability <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A probability lies between 0 and 1.");
        }

        return Curve.Load(probability);
    }
}
