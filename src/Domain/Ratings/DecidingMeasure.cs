namespace Toepan.Domain.Ratings;

/// <summary>What decided the overall level of a rating.</summary>
/// <param name="Region">Region, or null where a finding decided.</param>
/// <param name="Code">Measure, or null where a finding decided.</param>
/// <param name="Value">Its value.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Rule">Key of the rule that held the level down, or null where the region's own level did.</param>
public sealed record DecidingMeasure(string? Region, string? Code, double? Value, string? Unit, string? Rule)
{
    private const string CapPrefix = "cap.";

    /// <summary>
    /// The last rule that changed the overall level: a finding's cap decides by itself, a rule on the structure by the structure's driver. Else the driver of
    /// the worst region of the occupant that gives the overall level, among equals the one with the greatest excess risk. Null where nothing is rated.
    /// </summary>
    public static DecidingMeasure? Of(Rating rating)
    {
        if (rating.Overall is null)
        {
            return null;
        }

        var rule = rating.Rules.LastOrDefault(outcome => outcome is { Fired: true, Changed: true, Region: null })?.Rule;
        if (rule is not null && rule.StartsWith(CapPrefix, StringComparison.Ordinal))
        {
            return new(null, null, null, null, rule);
        }

        var region = rule is not null && rule.Contains(rating.Structure.Region, StringComparison.Ordinal)
            ? rating.Structure
            : rating.Regions.Where(candidate => candidate.Position == rating.Position && candidate.Level is not null)
                .OrderByDescending(candidate => candidate.Level).ThenByDescending(candidate => candidate.Excess ?? 0).FirstOrDefault();
        return region is null ? null : new(region.Region, region.Driver, region.Value, region.Unit, rule);
    }
}
