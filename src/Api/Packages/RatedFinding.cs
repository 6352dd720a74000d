using Toepan.Domain.Packages;

namespace Toepan.Api.Packages;

/// <summary>A finding a reduction was rated with, as the reduction keeps it.</summary>
internal sealed record RatedFinding(
    string Id, string Origin, double? TimeMs, string? Camera, string Kind, string Region, string Severity, string Note, int? Position)
{
    public static RatedFinding Of(KeptFinding kept) => new(
        kept.Id, Came(kept), kept.Finding.TimeMs, kept.Finding.Camera, kept.Finding.Kind, kept.Finding.Region, kept.Finding.Severity.ToString().ToLowerInvariant(),
        kept.Finding.Note, kept.Finding.Position);

    private static string Came(KeptFinding kept) => kept switch { { InPackage: false } => "added", { Version: > 0 } => "corrected", _ => "package" };
}
