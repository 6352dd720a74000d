namespace Toepan.Domain.Ratings;

/// <summary>Protection levels, best to worst. On screen always "… protection": "low" alone reads as low risk.</summary>
public enum ProtectionLevel
{
    High = 0,
    Moderate = 1,
    Low = 2,
    VeryLow = 3,
}

public static class ProtectionLevels
{
    /// <summary>The level's word: high, moderate, low, very low.</summary>
    public static string Word(this ProtectionLevel level) => level switch
    {
        ProtectionLevel.High => "high",
        ProtectionLevel.Moderate => "moderate",
        ProtectionLevel.Low => "low",
        _ => "very low",
    };

    /// <summary>The worse of two levels.</summary>
    public static ProtectionLevel Worse(ProtectionLevel a, ProtectionLevel b) => a > b ? a : b;
}
