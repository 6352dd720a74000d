using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings;

/// <summary>Joint excess risk 1 − Π(1 − e) over groups of regions, the worst of each group.</summary>
public sealed record JointRule(string Name, IReadOnlyList<IReadOnlyList<string>> Groups, LevelBounds Bounds);

/// <summary>How the legs of some dummies count: by joint excess risk, or by the worst final level of their regions.</summary>
/// <param name="Dummy">The dummy.</param>
/// <param name="Joint">Joint excess risk; null where the worst level counts.</param>
/// <param name="WorstOf">Regions whose worst final level counts; empty with a joint rule.</param>
public sealed record LegsRule(DummyType Dummy, JointRule? Joint, IReadOnlyList<string> WorstOf)
{
    /// <summary>Every region it looks at.</summary>
    public IEnumerable<string> Regions => Joint?.Groups.SelectMany(group => group) ?? WorstOf;
}

/// <summary>
/// The overall level before structure and caps: the worse of life and legs, never worse than the worst region and at most
/// <paramref name="StepsBetterThanWorst"/> better than it.
/// </summary>
public sealed record OverallRule(JointRule Life, IReadOnlyList<LegsRule> Legs, int StepsBetterThanWorst);
