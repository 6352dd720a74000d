using Toepan.Api.Export;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;

namespace Toepan.Api.Measures;

/// <summary>The findings of a run as a table.</summary>
internal static class FindingExport
{
    private static readonly ExportColumn[] Columns =
    [
        ExportColumn.Text("test"), ExportColumn.Text("id"), ExportColumn.Number("time", "ms"), ExportColumn.Text("camera"), ExportColumn.Text("kind"), ExportColumn.Text("region"),
        ExportColumn.Text("severity"), ExportColumn.Whole("position"), ExportColumn.Text("note"), ExportColumn.Text("origin"), new("standing", CellKind.Flag),
    ];

    public static ExportTable Of(string test, IReadOnlyList<KeptFinding> findings, string query) => new(
        $"{test}-findings", Columns, findings.Select(kept => Cells(test, kept)), query, [MethodEdition.Current]);

    private static object?[] Cells(string test, KeptFinding kept) =>
    [
        test, kept.Id, kept.Finding.TimeMs, kept.Finding.Camera, kept.Finding.Kind, kept.Finding.Region, kept.Finding.Severity.ToString(), kept.Finding.Position, kept.Finding.Note,
        kept.InPackage ? "package" : "page", kept.Standing,
    ];
}
