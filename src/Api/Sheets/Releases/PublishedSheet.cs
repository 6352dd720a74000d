using Toepan.Domain.Ratings;
using Toepan.Domain.Sheets;
using Toepan.Domain.Sheets.Releases;

namespace Toepan.Api.Sheets.Releases;

/// <summary>A version as the public copy holds it: the signed document, and what the release adds.</summary>
/// <param name="Kind">First release, correction or withdrawal.</param>
/// <param name="Sha256">Hash of the signed document.</param>
/// <param name="Document">The document, with peers, answer and version; of a withdrawal the one that is taken back.</param>
/// <param name="Why">Why it is corrected or withdrawn.</param>
/// <param name="Before">Level of the version before, where there is one.</param>
/// <param name="LevelChanged">Whether the level is another one than before.</param>
public sealed record PublishedSheet(ReleaseKind Kind, string Sha256, SheetDocument Document, string? Why, ProtectionLevel? Before, bool LevelChanged);
