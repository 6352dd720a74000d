using Toepan.Domain.Measures;
using Toepan.Domain.Ratings;
using Toepan.Domain.Sheets;
using Toepan.Domain.Sheets.Releases;

namespace Toepan.Api.Sheets.Releases;

/// <summary>One measured figure behind a sheet.</summary>
public sealed record SheetVariable(string Code, double Value, string Unit);

/// <summary>What a reviewer signs: the composed sheet, the figures behind it, and what its picture is drawn from.</summary>
public sealed record SignedSheet(
    string Vehicle, string Class, string ClassTitle, string Test, ConsumerSheet Sheet, StructureResult Structure, IReadOnlyList<SheetVariable> Variables);

/// <summary>A version as the public copy holds it: the signed sheet, and what the release adds.</summary>
/// <param name="Kind">First release, correction or withdrawal.</param>
/// <param name="Sha256">Hash of the signed sheet.</param>
/// <param name="Signed">The sheet; of a withdrawal the one that is taken back.</param>
/// <param name="Why">Why it is corrected or withdrawn.</param>
/// <param name="Before">Level of the version before, where it was another one.</param>
/// <param name="LevelChanged">Whether the level is another one than before.</param>
/// <param name="Answer">The manufacturer's answer, if they agree to its printing.</param>
public sealed record PublishedSheet(
    ReleaseKind Kind, string Sha256, SignedSheet Signed, string? Why, ProtectionLevel? Before, bool LevelChanged, string? Answer);
