namespace Toepan.Domain.Ratings;

/// <summary>The largest values that are still high, moderate and low; inclusive. Above the last is very low.</summary>
public sealed record LevelBounds(double High, double Moderate, double Low)
{
    /// <summary>The level of a value, in the unit of the bounds.</summary>
    public ProtectionLevel Of(double value) =>
        value <= High ? ProtectionLevel.High
        : value <= Moderate ? ProtectionLevel.Moderate
        : value <= Low ? ProtectionLevel.Low
        : ProtectionLevel.VeryLow;

    /// <summary>The largest value still at a level; +∞ for very low.</summary>
    public double Largest(ProtectionLevel level) => level switch
    {
        ProtectionLevel.High => High,
        ProtectionLevel.Moderate => Moderate,
        ProtectionLevel.Low => Low,
        _ => double.PositiveInfinity,
    };
}
