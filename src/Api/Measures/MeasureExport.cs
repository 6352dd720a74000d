using Toepan.Api.Export;

namespace Toepan.Api.Measures;

/// <summary>Measures of a run → a table to be taken out: a row a measure, its unit beside it.</summary>
internal static class MeasureExport
{
    private static readonly ExportColumn[] Columns =
    [
        ExportColumn.Text("test"), ExportColumn.Text("code"), ExportColumn.Whole("position"), ExportColumn.Number("value"), ExportColumn.Text("unit"),
        ExportColumn.Number("from", "s"), ExportColumn.Number("to", "s"), ExportColumn.Text("absent"), ExportColumn.Number("atLeast"), ExportColumn.Number("atMost"),
        ExportColumn.Whole("filterClass"), ExportColumn.Number("uncertainty"), ExportColumn.Text("detail"), ExportColumn.Text("sources"), ExportColumn.Text("methodEdition"), ExportColumn.Text("inDoubt"),
    ];

    public static ExportTable Of(string test, IReadOnlyList<MeasureJson> measures, string query) => new(
        $"{test}-measures", Columns, measures.Select(measure => Cells(test, measure)), query,
        [.. measures.Select(measure => measure.MethodEdition).Distinct().Order(StringComparer.Ordinal)]);

    private static object?[] Cells(string test, MeasureJson measure) =>
    [
        test, measure.Code, measure.Position, measure.Value, measure.Unit, measure.From, measure.To, measure.Absent, measure.Bounds?.AtLeast, measure.Bounds?.AtMost,
        measure.FilterClass, measure.Uncertainty, measure.Detail, string.Join(' ', measure.Sources), measure.MethodEdition, measure.InDoubt,
    ];
}
