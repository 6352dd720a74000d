using Toepan.Api.Export;
using Toepan.Domain.Measures;

namespace Toepan.Api.Measures;

/// <summary>The displacements of a run as a table; mm, vehicle frame.</summary>
internal static class StructureExport
{
    private static readonly ExportColumn[] Columns =
    [
        ExportColumn.Text("test"), ExportColumn.Text("point"), ExportColumn.Number("rearward", "mm"), ExportColumn.Number("lateral", "mm"), ExportColumn.Number("upward", "mm"),
        ExportColumn.Number("resultant", "mm"), ExportColumn.Number("uncertainty", "mm"),
    ];

    public static ExportTable Of(string test, StructureResult structure, string query) => new(
        $"{test}-structure", Columns,
        structure.Points.Select(point => new object?[] { test, point.Point, point.Rearward, point.Lateral, point.Upward, point.Resultant, point.Uncertainty }),
        query, [MethodEdition.Current]);
}
