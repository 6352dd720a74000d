namespace Toepan.Domain.Analysis.Relations;

/// <summary>Where a figure lies with a stated confidence.</summary>
/// <param name="Low">Lower end, in the figure's unit.</param>
/// <param name="High">Upper end.</param>
public readonly record struct Interval(double Low, double High)
{
    /// <summary>The confidence of every interval of this folder.</summary>
    public const double Confidence = 0.95;

    /// <summary>Φ⁻¹(0.975), of a two-sided interval of 95 %. Source: tables of the standard normal distribution.</summary>
    internal const double NormalQuantile = 1.959963984540054;

    /// <summary>True where nothing (0) lies inside.</summary>
    public bool HoldsZero => Low <= 0 && High >= 0;
}
