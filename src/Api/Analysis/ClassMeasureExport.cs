using Toepan.Api.Export;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Analysis;

/// <summary>Vehicles × measures of a class → a table to be taken out: a row an occupant, a column a measure.</summary>
internal static class ClassMeasureExport
{
    private static readonly ExportColumn[] Fixed =
    [
        ExportColumn.Text("vehicle"), ExportColumn.Text("make"), ExportColumn.Text("model"), ExportColumn.Text("test"), ExportColumn.Text("kind"),
        new("valid", CellKind.Flag), ExportColumn.Whole("position"), ExportColumn.Text("seat"), ExportColumn.Text("dummy"), ExportColumn.Whole("modelYear"),
        ExportColumn.Number("testMassKg", "kg"), ExportColumn.Text("procedure"), ExportColumn.Text("date"), ExportColumn.Text("overall"), ExportColumn.Text("methodEdition"),
    ];

    public static ExportTable Of(ClassMeasures table, string query) => new(
        table.Class,
        [.. Fixed, .. table.Measures.Select((code, at) => ExportColumn.Number(code, table.Statistics[at].Unit))],
        table.Rows.Select(Cells), query, table.MethodEditions);

    private static object?[] Cells(MeasuredRow row) =>
    [
        row.Vehicle.Key, row.Vehicle.Make, row.Vehicle.Model, row.Test, row.Kind == ResultKind.Run ? "run" : "summary", row.Valid, row.Position, row.Seat, row.Dummy,
        row.ModelYear, row.TestMassKg, row.Procedure, row.Date?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), row.Overall?.Word(),
        row.MethodEdition, .. row.Values.Select(value => (object?)value),
    ];
}
