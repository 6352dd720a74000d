namespace Toepan.Domain.Programme;

/// <summary>What a conduct item came to.</summary>
public enum Verdict
{
    /// <summary>Recorded, and inside its inclusive bounds.</summary>
    Within,

    /// <summary>Recorded, and outside its bounds.</summary>
    Outside,

    /// <summary>Nothing was recorded. A required item not recorded counts as outside.</summary>
    NotRecorded,
}

/// <summary>One conduct item judged by one procedure edition.</summary>
/// <param name="Item">Item key in camelCase: <c>impactSpeed</c>, <c>speedAgreement</c>, <c>overlap</c>, <c>dummyTemperature</c>, <c>testMass</c>, <c>impactAngle</c>, <c>verticalAlignment</c>.</param>
/// <param name="Reading">The judged reading (for temperature the reading furthest out), or null.</param>
/// <param name="Unit">Unit of reading and bounds.</param>
/// <param name="Lower">Inclusive lower bound, or null.</param>
/// <param name="Upper">Inclusive upper bound, or null.</param>
/// <param name="Margin">Distance from the reading to the nearer bound: negative = outside.</param>
/// <param name="Verdict">Within, outside or not recorded.</param>
/// <param name="Required">Whether the procedure edition requires the item.</param>
/// <param name="Source">Where the tolerance comes from; a key of docs/sources.md or "common practice, no source".</param>
public sealed record ConductVerdict(
    string Item, decimal? Reading, string Unit, decimal? Lower, decimal? Upper, decimal? Margin, Verdict Verdict, bool Required, string Source)
{
    /// <summary>True where the item speaks against the run: outside, or required and not recorded.</summary>
    public bool Fails => Verdict == Verdict.Outside || (Required && Verdict == Verdict.NotRecorded);
}

/// <summary>All conduct verdicts of a run. The run is valid when no item fails.</summary>
public sealed record ConductJudgement(IReadOnlyList<ConductVerdict> Items)
{
    public bool Valid => Items.All(item => !item.Fails);
}
