using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings;

/// <summary>Joint excess risk 1 − Π(1 − e) over groups of regions, the worst of each group.</summary>
public sealed record JointRule(string Name, IReadOnlyList<IReadOnlyList<string>> Groups, LevelBounds Bounds);

/// <summary>How one part of the body of some dummies counts: by joint excess risk, by the worst final level of regions, or by the worse of both.</summary>
/// <param name="Dummy">The dummy.</param>
/// <param name="Name">What the part is called in a sentence.</param>
/// <param name="Joint">Joint excess risk; null where only the worst level counts.</param>
/// <param name="WorstOf">Regions whose worst final level counts; may be empty with a joint rule.</param>
public sealed record PartRule(DummyType Dummy, string Name, JointRule? Joint, IReadOnlyList<string> WorstOf)
{
    /// <summary>Every region it looks at.</summary>
    public IEnumerable<string> Regions => (Joint?.Groups.SelectMany(group => group) ?? []).Concat(WorstOf);

    /// <summary>The level from a joint excess risk and final region levels.</summary>
    public ProtectionLevel Of(double? excess, Func<string, ProtectionLevel> levelOf)
    {
        var level = Joint is { } joint && excess is { } e ? joint.Bounds.Of(e) : ProtectionLevel.High;
        return WorstOf.Aggregate(level, (worst, region) => ProtectionLevels.Worse(worst, levelOf(region)));
    }
}

/// <summary>
/// The overall level before structure and caps: the worse of life and legs, never worse than the worst region and at most
/// <paramref name="StepsBetterThanWorst"/> better than it. A dummy may have no legs rule: then life alone counts.
/// </summary>
public sealed record OverallRule(IReadOnlyList<PartRule> Life, IReadOnlyList<PartRule> Legs, int StepsBetterThanWorst)
{
    public PartRule? LifeOf(DummyType dummy) => Life.FirstOrDefault(rule => rule.Dummy == dummy);

    public PartRule? LegsOf(DummyType dummy) => Legs.FirstOrDefault(rule => rule.Dummy == dummy);
}
