using Toepan.Domain.Packages;

namespace Toepan.Domain.Ratings;

/// <summary>What a finding of film or inspection does to a level.</summary>
/// <param name="Rule">Stable key, e.g. <c>cap.door-opened</c>.</param>
/// <param name="Finding">Finding kind.</param>
/// <param name="Severity">Severity from which it counts.</param>
/// <param name="Region">The region it holds, whatever region the finding names; null for the overall level or <paramref name="FindingRegions"/>.</param>
/// <param name="FindingRegions">Where not empty: it holds the finding's own region, if it is one of these, and nothing else.</param>
/// <param name="AtBest">Level at best.</param>
/// <param name="Words">What happened, as a clause.</param>
/// <param name="Source">Source.</param>
public sealed record CapRule(
    string Rule, string Finding, FindingSeverity Severity, string? Region, IReadOnlyList<string> FindingRegions,
    ProtectionLevel AtBest, string Words, string Source)
{
    /// <summary>Whether it holds the overall level rather than a region.</summary>
    public bool OnOverall => Region is null && FindingRegions.Count == 0;
}
