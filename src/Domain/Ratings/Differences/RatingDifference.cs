using Toepan.Domain.Ratings.Steps;

namespace Toepan.Domain.Ratings.Differences;

/// <summary>What makes one run's overall level another under another scheme.</summary>
/// <param name="Rule">Key of the rule or bound that did it: <c>bound.head</c>, <c>limit.head.hic15</c>, <c>cap.fire</c>, <c>overall.worse</c>, <c>not-rated</c>.</param>
/// <param name="Text">Sentences that say so.</param>
public sealed record LevelReason(string Rule, string Text);

/// <summary>
/// Two ratings of one run, and why they differ. The reason is looked for in this order: an input or region that one scheme has not; the region or
/// structure that moved furthest the same way, by its limit, cap or bound; else the rule of the overall level that fires in one and not in the other.
/// </summary>
public static class RatingDifference
{
    /// <summary>Null where the overall level is the same.</summary>
    public static LevelReason? Of(Rating before, Rating after, Scheme scheme)
    {
        if (before.Overall == after.Overall)
        {
            return null;
        }

        if (before.Overall is null || after.Overall is null)
        {
            return new("not-rated", after.Overall is null ? $"Not rated: {after.NotRated}." : $"Rated now; before it was not: {before.NotRated}.");
        }

        var worse = after.Overall > before.Overall;
        return Moved(before, after, worse) is { } region ? Region(region.Before, region.After, after, scheme) : Overall(before, after, worse);
    }

    private static (RegionRating? Before, RegionRating After)? Moved(Rating before, Rating after, bool worse)
    {
        var old = Own(before).ToDictionary(region => region.Region, StringComparer.Ordinal);
        var moved = Own(after)
            .Select(region => (Before: old.GetValueOrDefault(region.Region), After: region))
            .Select(pair => (pair.Before, pair.After, Steps: Moves(pair.Before, pair.After) * (worse ? 1 : -1)))
            .Where(pair => pair.Steps > 0 && (!worse || pair.After.Level >= after.Overall - 1))
            .OrderByDescending(pair => pair.Steps).ThenByDescending(pair => pair.After.Level)
            .ToList();
        return moved.Count == 0 ? null : (moved[0].Before, moved[0].After);
    }

    /// <summary>A region the scheme before did not have counts as high.</summary>
    private static int Moves(RegionRating? before, RegionRating after) =>
        after.Level is { } now ? (int)now - (int)(before?.Level ?? ProtectionLevel.High) : 0;

    private static IEnumerable<RegionRating> Own(Rating rating) => rating.Regions.Where(region => region.Position == rating.Position).Append(rating.Structure);

    private static LevelReason Region(RegionRating? before, RegionRating after, Rating rating, Scheme scheme)
    {
        var name = Name(after, scheme);
        var from = before?.Level is { } level ? $"{level.Word()} to " : "";
        if (after.Level > after.Unlimited && rating.Rules.FirstOrDefault(rule => rule.Changed && rule.Region == after.Region && rule.Position == after.Position) is { } held)
        {
            return new(held.Rule, $"{Sentence.Start(name)}: {from}{after.Level!.Value.Protection()}. {held.Text}");
        }

        var bounds = BoundsOf(after, scheme) is { } found ? $" (largest value of high {Figure(found.High, after)}, moderate {Figure(found.Moderate, after)}, low {Figure(found.Low, after)})" : "";
        return new($"bound.{after.Region}", $"{Sentence.Start(name)}: {from}{after.Level!.Value.Protection()}, by {scheme.WordOf(after.Driver!)} of {Value(after)}{bounds}.");
    }

    private static LevelReason Overall(Rating before, Rating after, bool worse)
    {
        var (one, other) = worse ? (after, before) : (before, after);
        var fired = one.Rules.FirstOrDefault(rule => rule.Region is null && rule.Changed && !other.Rules.Any(same => same.Rule == rule.Rule && same.Changed));
        if (fired is not null)
        {
            return new(fired.Rule, worse ? fired.Text : $"No longer: {fired.Text}");
        }

        var rule = after.Rules.FirstOrDefault(outcome => outcome.Rule == "overall.worse");
        return new("overall.worse", rule?.Text ?? "The overall rule counts the same regions otherwise.");
    }

    private static string Figure(double bound, RegionRating region) =>
        region.Excess is not null ? Figures.Percent(bound) : Figures.Of(bound, region.Unit ?? "");

    private static string Value(RegionRating region) =>
        $"{Figures.Of(region.Value!.Value, region.Unit ?? "")}{(region.Excess is { } excess ? $", excess risk {Figures.Percent(excess)}" : "")}";

    private static string Name(RegionRating region, Scheme scheme) =>
        region.Position is null ? scheme.Structure.Name : scheme.Regions.FirstOrDefault(rule => rule.Region == region.Region)?.Name ?? region.Region;

    private static LevelBounds? BoundsOf(RegionRating region, Scheme scheme) => region.Position is null
        ? scheme.Structure.Measures.FirstOrDefault(measure => measure.Measure == region.Driver)?.Bounds
        : region.Excess is not null ? scheme.Regions.FirstOrDefault(rule => rule.Region == region.Region && rule.Risk is not null)?.Risk!.Bounds
        : scheme.Regions.Where(rule => rule.Region == region.Region).SelectMany(rule => rule.Measures).FirstOrDefault(measure => measure.Measure == region.Driver)?.Bounds;
}
