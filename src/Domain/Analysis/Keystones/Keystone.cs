using Toepan.Domain.Ratings;

namespace Toepan.Domain.Analysis.Keystones;

/// <summary>What is left out.</summary>
public enum KeystoneKind
{
    /// <summary>One transducer: every channel whose code differs in the filter letter alone.</summary>
    Channel,

    /// <summary>One reference point of the structure.</summary>
    Reference,
}

/// <summary>What leaving it out does to the overall level, from least to most.</summary>
public enum KeystoneEffect
{
    /// <summary>The level stays and is still rated.</summary>
    None,

    /// <summary>A region is no longer rated, but whatever its values were the level would be the same.</summary>
    Certain,

    /// <summary>The level could be another, by a region or a limit that is then not measured: without it the published sentence could not be said.</summary>
    Open,

    /// <summary>The level is rated and is another.</summary>
    Other,
}

/// <summary>A region whose level changes.</summary>
public sealed record KeystoneRegion(string Region, int? Position, ProtectionLevel? With, ProtectionLevel? Without);

/// <summary>A rating without one transducer or reference point.</summary>
/// <param name="Kind">Transducer or reference point.</param>
/// <param name="Name">Channel code (of several, the first), or point.</param>
/// <param name="Effect">What it does to the overall level.</param>
/// <param name="Overall">The overall level without it; null = not rated.</param>
/// <param name="Possible">The overall levels some value of what is then missing would give; empty where nothing is missing.</param>
/// <param name="Regions">Regions whose level changes.</param>
public sealed record Keystone(
    KeystoneKind Kind, string Name, KeystoneEffect Effect, ProtectionLevel? Overall, IReadOnlyList<ProtectionLevel> Possible, IReadOnlyList<KeystoneRegion> Regions);

/// <summary>Every transducer and reference point of a run, each left out once.</summary>
/// <param name="Overall">The overall level with all of them; null = not rated.</param>
/// <param name="NotRated">Why not, or null.</param>
/// <param name="Items">The ones with most effect first, then in the package's order.</param>
public sealed record KeystoneReport(ProtectionLevel? Overall, string? NotRated, IReadOnlyList<Keystone> Items);
