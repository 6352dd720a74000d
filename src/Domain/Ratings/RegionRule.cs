using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings;

/// <summary>A load and the published curve that makes a risk of it.</summary>
/// <param name="Load">Measure code, or the name the risk measure gives its driver where that is no measure of its own.</param>
/// <param name="Function">Name of the risk function.</param>
public sealed record CurveUse(string Load, string Function);

/// <summary>A region rated on the excess risk e = (p − p₀)/(1 − p₀), p₀ the largest of the curves' risks at zero load.</summary>
/// <param name="Measure">Code of the risk.</param>
/// <param name="Curves">The curves; the largest risk counts.</param>
/// <param name="Bounds">Bounds of the excess risk.</param>
/// <param name="Source">Curves and bounds.</param>
public sealed record RiskRule(string Measure, IReadOnlyList<CurveUse> Curves, LevelBounds Bounds, string Source);

/// <summary>A measure with bounds of its own, in its unit.</summary>
public sealed record RatedMeasure(string Measure, LevelBounds Bounds, string Unit, string Source);

/// <summary>A limit; a value over it holds the region to a level at best.</summary>
public sealed record LimitRule(string Measure, double Limit, string Unit, ProtectionLevel AtBest, string Source);

/// <summary>How one region of some dummies is rated: by a risk or by measures, never both.</summary>
public sealed record RegionRule
{
    /// <summary>Region key, e.g. <c>thigh.left</c>.</summary>
    public required string Region { get; init; }

    /// <summary>Name in a sentence, e.g. "left thigh".</summary>
    public required string Name { get; init; }

    /// <summary>The dummy this rule is for.</summary>
    public required DummyType Dummy { get; init; }

    /// <summary>What must be present: of each group at least one measure. Otherwise the region is not rated.</summary>
    public required IReadOnlyList<IReadOnlyList<string>> Inputs { get; init; }

    /// <summary>Words by which findings of film and inspection name this region, e.g. <c>lower-leg-left</c>.</summary>
    public IReadOnlyList<string> FindingRegions { get; init; } = [];

    public RiskRule? Risk { get; init; }

    public IReadOnlyList<RatedMeasure> Measures { get; init; } = [];

    public IReadOnlyList<LimitRule> Limits { get; init; } = [];
}
