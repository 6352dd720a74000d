using Toepan.Api.Export;

namespace Toepan.Api.Analysis;

/// <summary>Repeated runs as a table: a line a measure, a value and a difference for each run.</summary>
internal static class RepeatExport
{
    public static ExportTable Of(Repeats repeats, string query)
    {
        var tests = repeats.Runs.Select(run => run.Run.Test).ToList();
        return new(
            $"repeats-{repeats.Vehicle.Key}",
            [
                ExportColumn.Text("measure"), ExportColumn.Whole("position"), ExportColumn.Text("unit"), .. tests.Select(test => ExportColumn.Number(test)),
                .. tests.Skip(1).Select(test => ExportColumn.Number($"{test} - {tests[0]}")), ExportColumn.Whole("count"), ExportColumn.Number("mean"), ExportColumn.Number("sd"),
                ExportColumn.Number("cv"), ExportColumn.Text("noCv"),
            ],
            repeats.Comparison.Measures.Select(measure => (object?[])[
                measure.Code, measure.Position, measure.Unit, .. measure.Values.Cast<object?>(), .. measure.Differences.Skip(1).Cast<object?>(), measure.Count, measure.Mean, measure.Sd,
                measure.Cv, measure.NoCv]),
            query, [Domain.Measures.MethodEdition.Current]);
    }
}
