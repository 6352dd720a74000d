using Toepan.Domain.Packages;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>Findings of film and inspection against the caps of the scheme.</summary>
internal sealed class CapStep(Scheme scheme, IReadOnlyList<Finding> findings, int driverPosition)
{
    /// <summary>Applies the caps on regions to one region; a cap on a region not rated leaves it so.</summary>
    public RegionState OnRegion(RegionState state)
    {
        foreach (var cap in scheme.Caps.Where(cap => cap.Region == state.Region || cap.FindingRegions.Contains(state.Region)))
        {
            var found = OfKind(cap).Where(finding => Concerns(finding, cap, state)).ToList();
            var fired = found.Exists(finding => finding.Severity >= cap.Severity);
            var changed = fired && state.Level < cap.AtBest;
            var text = CapSentence.Text(cap, found, state.Name, state.Level, fired, changed);
            var outcome = new RuleOutcome(cap.Rule, fired, changed, state.Region, state.Position, text);
            state = fired ? state.Holding(outcome, cap.AtBest) with { Capped = state.Capped || changed } : state.Noting(outcome);
        }

        return state;
    }

    /// <summary>The caps on the overall level, whoever's finding it is, each held against the level the ones before it left.</summary>
    public List<RuleOutcome> OnOverall(ProtectionLevel? level)
    {
        var outcomes = new List<RuleOutcome>();
        foreach (var cap in scheme.Caps.Where(cap => cap.OnOverall))
        {
            var found = OfKind(cap).ToList();
            var fired = found.Exists(finding => finding.Severity >= cap.Severity);
            var changed = fired && level < cap.AtBest;
            outcomes.Add(new(cap.Rule, fired, changed, null, null, CapSentence.Text(cap, found, "overall level", level, fired, changed)));
            level = changed ? cap.AtBest : level;
        }

        return outcomes;
    }

    /// <summary>The worst level that a fired cap leaves the overall; high where none fired.</summary>
    public ProtectionLevel OverallAtBest => scheme.Caps
        .Where(cap => cap.OnOverall && OfKind(cap).Any(finding => finding.Severity >= cap.Severity))
        .Select(cap => cap.AtBest)
        .DefaultIfEmpty(ProtectionLevel.High)
        .Max();

    private IEnumerable<Finding> OfKind(CapRule cap) =>
        findings.Where(finding => string.Equals(finding.Kind, cap.Finding, StringComparison.OrdinalIgnoreCase));

    private bool Concerns(Finding finding, CapRule cap, RegionState state) =>
        (finding.Position ?? driverPosition) == state.Position && (cap.Region is not null || Names(state.Region).Contains(finding.Region, StringComparer.OrdinalIgnoreCase));

    /// <summary>The words by which findings name a region; the scheme gives them.</summary>
    private IReadOnlyList<string> Names(string region) => scheme.Regions.First(rule => rule.Region == region).FindingRegions;
}
