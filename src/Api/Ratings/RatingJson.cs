using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings;

/// <summary>A rating as the contract writes it. Levels are words: high, moderate, low, very low.</summary>
/// <param name="Scheme">Scheme key.</param>
/// <param name="Valid">Whether the run was valid; of a run not valid the levels are shown, never released.</param>
/// <param name="Overall">Overall level; null = not rated.</param>
/// <param name="NotRated">Why not, or null.</param>
/// <param name="Position">Seat position whose occupant gives the overall level.</param>
/// <param name="Regions">Every region of every occupant, and the structure.</param>
/// <param name="Structure">The structure alone.</param>
/// <param name="Caps">Limits and caps that fired.</param>
/// <param name="Explanation">Sentences in reading order.</param>
/// <param name="LifeExcess">Joint excess risk over head, neck, chest.</param>
/// <param name="LegsExcess">Joint excess risk over the legs.</param>
/// <param name="PossibleOverall">Overall levels that some completion of missing inputs would give.</param>
/// <param name="Rules">Every rule of the scheme, those that did not fire too.</param>
/// <param name="Arithmetic">The formulas with their numbers.</param>
/// <param name="Inputs">SHA-256 of what it was made from: package, measures, findings, scheme document.</param>
/// <param name="Reduction">Number of the reduction.</param>
/// <param name="MethodEdition">Method edition of the reduction.</param>
/// <param name="WouldNowBe">Of a released run: what the scheme that rates now makes of it.</param>
public sealed record RatingJson(
    string Scheme, bool Valid, ProtectionLevel? Overall, string? NotRated, int Position, IReadOnlyList<RegionJson> Regions, RegionJson Structure,
    IReadOnlyList<CapJson> Caps, IReadOnlyList<string> Explanation, double? LifeExcess, double? LegsExcess,
    IReadOnlyList<ProtectionLevel> PossibleOverall, IReadOnlyList<RuleOutcome> Rules, IReadOnlyList<ArithmeticStep> Arithmetic, InputHashes? Inputs,
    long? Reduction, string? MethodEdition, RatingAside? WouldNowBe)
{
    public static RatingJson Of(RatingEvidence evidence) => Of(evidence.Rating) with
    {
        Arithmetic = evidence.Arithmetic, Inputs = evidence.Inputs, Reduction = evidence.Reduction, MethodEdition = evidence.MethodEdition,
        WouldNowBe = evidence.WouldNowBe,
    };

    /// <summary>The rating alone.</summary>
    public static RatingJson Of(Rating rating)
    {
        var structure = RegionJson.Of(rating.Structure);
        return new RatingJson(
            rating.Scheme, rating.Valid, rating.Overall, rating.NotRated, rating.Position, [.. rating.Regions.Select(RegionJson.Of), structure],
            structure, [.. rating.Rules.Where(rule => rule.Fired).Select(CapJson.Of)], rating.Explanation, rating.LifeExcess,
            rating.LegsExcess, rating.PossibleOverall, rating.Rules, [], null, null, null, null);
    }
}

/// <summary>One region rated.</summary>
public sealed record RegionJson(
    string Region, int? Position, ProtectionLevel? Level, string? NotRated, string? Driver, double? Value, string? Unit, LevelMargin? Margin,
    double? Risk, double? Excess, ProtectionLevel? BeforeLimits, IReadOnlyList<string> Rules)
{
    public static RegionJson Of(RegionRating region) => new(
        region.Region, region.Position, region.Level, region.NotRated, region.Driver, region.Value, region.Unit, region.Margin, region.Risk,
        region.Excess, region.Unlimited, region.Rules);
}

/// <summary>A rule that fired: whether it changed a level, on what region, and a sentence.</summary>
public sealed record CapJson(string Rule, bool Changed, string? Region, int? Position, string Text)
{
    public static CapJson Of(RuleOutcome rule) => new(rule.Rule, rule.Changed, rule.Region, rule.Position, rule.Text);
}
