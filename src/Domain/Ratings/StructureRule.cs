namespace Toepan.Domain.Ratings;

/// <summary>What a level of the structure does to the overall level.</summary>
/// <param name="Rule">Stable key.</param>
/// <param name="When">The structure's level.</param>
/// <param name="AtBest">The overall level at best.</param>
public sealed record StructureHold(string Rule, ProtectionLevel When, ProtectionLevel AtBest);

/// <summary>The structure is the worst of its measures that are present.</summary>
public sealed record StructureRule(
    string Name, IReadOnlyList<IReadOnlyList<string>> Inputs, IReadOnlyList<RatedMeasure> Measures, IReadOnlyList<StructureHold> Holds);
