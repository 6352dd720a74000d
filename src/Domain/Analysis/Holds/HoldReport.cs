using Toepan.Domain.Ratings;

namespace Toepan.Domain.Analysis.Holds;

/// <summary>A chance under two assumptions: every measure scatters for itself, or all rise and fall together.</summary>
public sealed record TwoChances(double Independent, double Correlated);

/// <summary>The chance that a repeated run gets this overall level.</summary>
public sealed record LevelChance(ProtectionLevel Level, TwoChances Chance);

/// <summary>One region of the rating and the chance that a repeated run gives it the same level.</summary>
/// <param name="Level">Its level; null = not rated.</param>
/// <param name="NotRated">Why not, or null.</param>
/// <param name="Holds">The chance; null where it is not rated.</param>
public sealed record RegionHold(string Region, int? Position, ProtectionLevel? Level, string? NotRated, TwoChances? Holds);

/// <summary>
/// What a repeat would be worth. Both valid runs are published and the lower one rates the vehicle, so a repeat changes the published level only
/// by being worse.
/// </summary>
/// <param name="Worse">Chance that the repeat is worse: the published level changes.</param>
/// <param name="Better">Chance that the repeat is better: the published level stays, the doubt is shown.</param>
/// <param name="VehicleCost">Cost of a vehicle in any currency, as given; null where none was.</param>
/// <param name="CostPerChange">Cost over the chance of a change (independent): what finding one wrong level costs on average; null without cost or chance.</param>
public sealed record RepeatWorth(TwoChances Worse, TwoChances Better, double? VehicleCost, double? CostPerChange);

/// <summary>Whether a run's levels would come out the same again.</summary>
/// <param name="Scheme">Scheme key.</param>
/// <param name="Draws">Number of draws.</param>
/// <param name="Seed">Seed of the draws.</param>
/// <param name="Overall">The run's overall level; null = not rated.</param>
/// <param name="NotRated">Why not, or null.</param>
/// <param name="Holds">Chance that the overall level holds; null where there is none.</param>
/// <param name="Levels">Chances of all four levels, best first; empty where there is none.</param>
/// <param name="Regions">Every region and the structure.</param>
/// <param name="Repeat">What a repeat would be worth; null without an overall level.</param>
/// <param name="Unknown">Codes of measures whose scatter is not known; they are kept as they are.</param>
public sealed record HoldReport(
    string Scheme, int Draws, int Seed, ProtectionLevel? Overall, string? NotRated, TwoChances? Holds, IReadOnlyList<LevelChance> Levels,
    IReadOnlyList<RegionHold> Regions, RepeatWorth? Repeat, IReadOnlyList<string> Unknown);
