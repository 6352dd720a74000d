using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings.Recomputations;

/// <summary>A method edition this program can compute.</summary>
/// <param name="Edition">Its word.</param>
/// <param name="Title">Its title.</param>
/// <param name="Changes">What it changes.</param>
/// <param name="Current">Whether it reduces new uploads.</param>
/// <param name="Recomputation">The latest recomputation by it, or null.</param>
public sealed record MethodSummary(string Edition, string Title, string Changes, bool Current, Recomputation? Recomputation);

/// <summary>What a candidate edition moves of one measure.</summary>
/// <param name="Code">Measure code.</param>
/// <param name="Unit">Unit.</param>
/// <param name="Compared">Values compared.</param>
/// <param name="Moved">Values that differ, in any of their twelve digits, or that only one edition has.</param>
/// <param name="LargestMove">Largest difference, candidate minus current, by size; null where only presence differs.</param>
/// <param name="LargestTest">Run it is of.</param>
/// <param name="LargestShare">That difference over the current value; null where that is zero.</param>
public sealed record MovedMeasure(string Code, string Unit, int Compared, int Moved, double? LargestMove, string? LargestTest, double? LargestShare);

/// <summary>A run whose overall level the candidate edition changes.</summary>
public sealed record MovedLevel(string Test, ProtectionLevel? Before, ProtectionLevel? After);

/// <summary>What a candidate edition moves.</summary>
/// <param name="Edition">The candidate.</param>
/// <param name="Recomputation">The recomputation compared.</param>
/// <param name="Outdated">Runs that changed since they were computed; while there is one the edition cannot be promoted.</param>
/// <param name="Measures">By measure, the ones that moved first.</param>
/// <param name="Levels">Runs whose level changes.</param>
public sealed record MethodComparison(
    MethodSummary Edition, Recomputation Recomputation, IReadOnlyList<string> Outdated, IReadOnlyList<MovedMeasure> Measures, IReadOnlyList<MovedLevel> Levels);
