namespace Toepan.Domain.Analysis;

/// <summary>How far two frontal results may be set side by side.</summary>
public enum MassStanding
{
    /// <summary>Similar mass: compared and ranked.</summary>
    Comparable,

    /// <summary>Compared with a caution, not ranked as equals.</summary>
    WithCaution,

    /// <summary>Never ranked against one another.</summary>
    NotComparable,

    /// <summary>A mass is not known.</summary>
    Unknown,
}

/// <summary>
/// Frontal results compare only between vehicles of similar mass: a barrier takes the vehicle's own energy, so a result says how it does against its like.
/// Ratio of the heavier to the lighter: up to 1.10 free, up to 1.15 with a caution, beyond not ranked. Common practice, no source.
/// </summary>
public static class MassComparison
{
    public const double FreeRatio = 1.10;
    public const double CautionRatio = 1.15;
    private const double Slack = 1e-9;

    /// <summary>Standing of two masses, kg; symmetric. A mass that is absent or not positive is unknown.</summary>
    public static MassStanding Of(double? oneKg, double? otherKg)
    {
        if (oneKg is not > 0 || otherKg is not > 0)
        {
            return MassStanding.Unknown;
        }

        var ratio = Math.Max(oneKg.Value, otherKg.Value) / Math.Min(oneKg.Value, otherKg.Value);
        return ratio <= FreeRatio + Slack ? MassStanding.Comparable : ratio <= CautionRatio + Slack ? MassStanding.WithCaution : MassStanding.NotComparable;
    }
}
