using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>Final region levels, excess risks and structure → the overall level of the rated occupant, with the outcome of each rule.</summary>
internal sealed class OverallRating
{
    private readonly Scheme scheme;
    private readonly LegsRule legs;
    private readonly Dictionary<string, RegionState> regions;

    public OverallRating(Scheme scheme, Occupant occupant, IReadOnlyList<RegionState> regions, RegionState structure, CapStep caps)
    {
        this.scheme = scheme;
        this.regions = regions.ToDictionary(state => state.Region, StringComparer.Ordinal);
        legs = scheme.Overall.Legs.First(rule => rule.Dummy == occupant.Dummy);
        LifeExcess = Joint(scheme.Overall.Life);
        LegsExcess = legs.Joint is { } joint ? Joint(joint) : null;
        List<RegionState> missing = [.. regions.Append(structure).Where(state => state.Level is null)];
        NotRated = missing.Count == 0 ? null : string.Join("; ", missing.Select(state => $"the {state.Name} is not rated ({state.NotRated})"));
        if (missing.Count == 0)
        {
            Worst = regions.MaxBy(state => state.Level!.Value)!;
            Life = scheme.Overall.Life.Bounds.Of(LifeExcess!.Value);
            Legs = legs.Joint?.Bounds.Of(LegsExcess!.Value) ?? legs.WorstOf.Max(region => this.regions[region].Level!.Value);
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

    /// <summary>What the legs are called: the joint rule's name, or that their worst level counts.</summary>
    public string LegsName => legs.Joint?.Name ?? "thighs and lower legs";

    public IReadOnlyList<RuleOutcome> Outcomes { get; }

    private double? Joint(JointRule rule) =>
        rule.Groups.SelectMany(group => group).All(region => regions[region].Excess is not null)
            ? OverallStep.Joint(rule.Groups, region => regions[region].Excess!.Value)
            : null;
}
