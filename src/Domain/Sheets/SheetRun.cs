using Toepan.Domain.Ratings;

namespace Toepan.Domain.Sheets;

/// <summary>One valid run of the vehicle.</summary>
/// <param name="Overall">Its overall level; null = not rated.</param>
/// <param name="Rates">Whether it is the one that rates the vehicle.</param>
public sealed record SheetRun(string Test, DateOnly Date, ProtectionLevel? Overall, bool Rates);

/// <summary>One region of the body of the rated dummy, the worse of left and right.</summary>
/// <param name="Region">head, neck, chest, thigh, lowerleg.</param>
/// <param name="Level">Its level; null = not rated.</param>
/// <param name="Risk">Risk by the published curve, 0 to 1; null where not rated or rated on loads.</param>
/// <param name="RiskFrom">Risk that one repeated run in twenty would stay below; null where the scatter is not known.</param>
/// <param name="RiskTo">Risk that one repeated run in twenty would exceed.</param>
public sealed record SheetRegion(string Region, ProtectionLevel? Level, double? Risk, double? RiskFrom, double? RiskTo);

/// <summary>Something film or inspection showed.</summary>
/// <param name="Kind">Kind as the package names it.</param>
/// <param name="Severity">concern or severe.</param>
public sealed record SheetFinding(string Kind, string Severity);

/// <summary>Chance that a repeated run gives the same overall level: every measure scattering for itself, and all together.</summary>
public sealed record SheetHolds(double Independent, double Correlated);

/// <summary>A point of the structure, mm in the vehicle frame (x forward, z down), before and after the crash.</summary>
/// <param name="Uncertainty">Largest standard uncertainty of its displacement, mm; null where unknown.</param>
public sealed record SheetPoint(
    string Point, double BeforeX, double BeforeZ, double AfterX, double AfterZ, double Rearward, double Upward, double? Uncertainty);

/// <summary>How the figures were made, and where the evidence is.</summary>
public sealed record SheetMethod
{
    public required DateOnly Date { get; init; }
    public required string? Laboratory { get; init; }
    public required string Procedure { get; init; }

    /// <summary>Key of the rating scheme; its document is served at <c>/api/v1/schemes/{scheme}</c>.</summary>
    public required string Scheme { get; init; }
    public required string SchemeTitle { get; init; }
    public required string MethodEdition { get; init; }

    /// <summary>SHA-256 of the test package, lower-case hex.</summary>
    public required string PackageSha256 { get; init; }
    public required long ReductionId { get; init; }
    public required long RatingId { get; init; }

    /// <summary>Dummy in the rated seat: H3 or HF.</summary>
    public required string Dummy { get; init; }
    public required int Position { get; init; }
}
