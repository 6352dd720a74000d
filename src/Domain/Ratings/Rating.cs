namespace Toepan.Domain.Ratings;

/// <summary>How far the driver's value is from the next level up and down, in the driver's unit; null at the end of the scale.</summary>
public sealed record LevelMargin(double? ToBetter, double? ToWorse);

/// <summary>One region of one occupant (or the structure) rated.</summary>
/// <param name="Region">head, neck, chest, thigh.left, thigh.right, lowerleg.left, lowerleg.right, structure.</param>
/// <param name="Position">Seat position; null for the structure.</param>
/// <param name="Level">The final level after limits and caps; null = not rated.</param>
/// <param name="NotRated">Why there is no level, or null.</param>
/// <param name="Driver">Code of the measure that decided the level.</param>
/// <param name="Value">Its value.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Margin">Distance to the next levels, in the driver's unit.</param>
/// <param name="Risk">Risk by the published curve, or null where the region is rated on measures.</param>
/// <param name="Excess">Excess risk e = (p − p₀)/(1 − p₀), or null.</param>
/// <param name="Unlimited">The level before limits and caps.</param>
/// <param name="Rules">Keys of the limits and caps that hold it where it is.</param>
public sealed record RegionRating(
    string Region, int? Position, ProtectionLevel? Level, string? NotRated, string? Driver, double? Value, string? Unit,
    LevelMargin? Margin, double? Risk, double? Excess, ProtectionLevel? Unlimited, IReadOnlyList<string> Rules);

/// <summary>One rule of the scheme and whether it fired.</summary>
/// <param name="Rule">Stable key, e.g. <c>cap.door-opened</c>, <c>limit.head.hic15</c>.</param>
/// <param name="Fired">Whether its condition held.</param>
/// <param name="Changed">Whether it made a level worse than it was.</param>
/// <param name="Region">Region it acts on, or null for the overall level.</param>
/// <param name="Position">Seat position, or null.</param>
/// <param name="Text">A sentence that says what the rule is and what it did.</param>
public sealed record RuleOutcome(string Rule, bool Fired, bool Changed, string? Region, int? Position, string Text);

/// <summary>A scheme applied to a reduction: levels, caps, overall level, and why. Append-only.</summary>
public sealed record Rating
{
    /// <summary>Scheme key and edition, e.g. <c>offset-frontal-1</c>.</summary>
    public required string Scheme { get; init; }

    /// <summary>Whether the run was valid. A run not valid is rated for show, never for release.</summary>
    public required bool Valid { get; init; }

    public required ProtectionLevel? Overall { get; init; }
    public required string? NotRated { get; init; }

    /// <summary>Seat position whose occupant gives the overall level.</summary>
    public required int Position { get; init; }

    /// <summary>Every region of every occupant; the structure stands apart.</summary>
    public required IReadOnlyList<RegionRating> Regions { get; init; }
    public required RegionRating Structure { get; init; }

    /// <summary>Joint excess over head, neck, chest; null when one is missing.</summary>
    public required double? LifeExcess { get; init; }

    /// <summary>Joint excess over the worse thigh and worse lower leg; null when missing or rated on levels (HF).</summary>
    public required double? LegsExcess { get; init; }

    public required IReadOnlyList<RuleOutcome> Rules { get; init; }

    /// <summary>Sentences, in reading order: overall first, then its driver, regions, structure, rules that fired.</summary>
    public required IReadOnlyList<string> Explanation { get; init; }

    /// <summary>Where inputs are missing: the levels that some completion of the missing values would give; one entry = it would not matter.</summary>
    public IReadOnlyList<ProtectionLevel> PossibleOverall { get; init; } = [];
}
