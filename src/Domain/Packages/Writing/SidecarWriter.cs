using System.Globalization;
using Toepan.Domain.Packages.Sidecars;

namespace Toepan.Domain.Packages.Writing;

/// <summary>Points, clearances and findings → CSV by RFC 4180; numbers in the shortest form that reads back to the same double.</summary>
internal static class SidecarWriter
{
    public static byte[] Points(IEnumerable<StructuralPoint> points) => Table(
        PointsFile.Columns,
        points.Select(point => (string[])[point.Name, point.Role == PointRole.Reference ? "reference" : "measured", .. Side(point.Before), .. Side(point.After)]));

    public static byte[] Clearances(IEnumerable<Clearance> clearances) => Table(
        ClearancesFile.Columns,
        clearances.Select(clearance => (string[])[clearance.Name, clearance.OpposingPoint, Text(clearance.Distance)]));

    public static byte[] Findings(IEnumerable<Finding> findings) => Table(
        ["time_ms", "camera", "kind", "region", "severity", "note", "position"],
        findings.Select(finding => (string[])
        [
            finding.TimeMs is { } time ? Text(time) : "", finding.Camera ?? "", finding.Kind, finding.Region,
            finding.Severity.ToString().ToLowerInvariant(), finding.Note, finding.Position?.ToString(CultureInfo.InvariantCulture) ?? "",
        ]));

    public static byte[] Films(IEnumerable<FilmTiming> films) => Table(
        [.. FilmsFile.Required, .. FilmsFile.Optional],
        films.Select(film => (string[])
        [
            film.File, Text(film.FramesPerSecond), Text(film.TimeZeroFrame), film.Camera ?? "",
            film.PlaybackFramesPerSecond is { } playback ? Text(playback) : "",
        ]));

    private static string[] Side(Coordinates? side) => side is { } at ? [Text(at.X), Text(at.Y), Text(at.Z)] : ["", "", ""];

    private static byte[] Table(string[] columns, IEnumerable<string[]> rows) =>
        TextBytes.Of(string.Concat(rows.Prepend(columns).Select(row => string.Join(',', row.Select(Field)) + TextBytes.LineEnd)));

    private static string Field(string text) =>
        text.AsSpan().IndexOfAny(",\"\r\n") >= 0 ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
