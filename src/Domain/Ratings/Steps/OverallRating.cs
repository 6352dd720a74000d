using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>Final region levels, excess risks and structure → the overall level of the rated occupant, with the outcome of each rule.</summary>
internal sealed class OverallRating
{
    private readonly Dictionary<string, RegionState> regions;

    public OverallRating(Scheme scheme, Occupant occupant, IReadOnlyList<RegionState> regions, RegionState structure, CapStep caps)
    {
        this.regions = regions.ToDictionary(state => state.Region, StringComparer.Ordinal);
        LifeRule = scheme.Overall.LifeOf(occupant.Dummy);
        LegsRule = scheme.Overall.LegsOf(occupant.Dummy);
        LifeExcess = Joint(LifeRule);
        LegsExcess = Joint(LegsRule);
        List<RegionState> missing = [.. regions.Append(structure).Where(state => state.Level is null)];
        NotRated = regions.Count == 0 ? $"the scheme has no regions for dummy {occupant.Dummy}"
            : missing.Count == 0 ? null
            : string.Join("; ", missing.Select(state => $"the {state.Name} is not rated ({state.NotRated})"));
        if (NotRated is null)
        {
            Worst = regions.MaxBy(state => state.Level!.Value)!;
            Life = LifeRule!.Of(LifeExcess, region => this.regions[region].Level!.Value);
            Legs = LegsRule?.Of(LegsExcess, region => this.regions[region].Level!.Value) ?? Life;
            Step = OverallStep.Of(scheme, Life, Legs, Worst.Level!.Value, structure.Level!.Value, caps.OverallAtBest);
        }

        Outcomes = [.. OverallSentences.Outcomes(this, scheme, structure), .. caps.OnOverall(Step?.Structured)];
    }

    public string? NotRated { get; }
    public double? LifeExcess { get; }
    public double? LegsExcess { get; }
    public ProtectionLevel Life { get; }
    public ProtectionLevel Legs { get; }
    public OverallStep? Step { get; }

    /// <summary>The worst region, the first of equals; null where something is not rated.</summary>
    public RegionState? Worst { get; }

    /// <summary>How the upper body counts; null where the scheme has no regions for the dummy.</summary>
    public PartRule? LifeRule { get; }

    /// <summary>How the legs count; null where life alone counts.</summary>
    public PartRule? LegsRule { get; }

    public IReadOnlyList<RuleOutcome> Outcomes { get; }

    private double? Joint(PartRule? part) =>
        part?.Joint is { } rule && rule.Groups.SelectMany(group => group).All(region => regions[region].Excess is not null)
            ? OverallStep.Joint(rule.Groups, region => regions[region].Excess!.Value)
            : null;
}
