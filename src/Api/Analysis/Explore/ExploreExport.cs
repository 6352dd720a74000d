using Toepan.Api.Export;
using Toepan.Domain.Measures;

namespace Toepan.Api.Analysis.Explore;

/// <summary>The runs of an answer → a table to be taken out.</summary>
internal static class ExploreExport
{
    public static ExportTable Of(ExploreAnswer answer, string query)
    {
        var second = answer.Question.Y is { } code && code != answer.Question.X ? code : null;
        ExportColumn[] columns =
        [
            ExportColumn.Text("test"), ExportColumn.Text("vehicle"), ExportColumn.Text("title"), ExportColumn.Text("class"), ExportColumn.Whole("modelYear"),
            ExportColumn.Number("massKg", "kg"), ExportColumn.Text("group"), new("summary", CellKind.Flag), ExportColumn.Number(answer.Question.X, answer.XUnit),
            .. second is null ? [] : new[] { ExportColumn.Number(second, answer.YUnit ?? "") },
        ];
        var rows = answer.Points.Select(point => new object?[]
        {
            point.Test, point.Vehicle, point.Title, point.Class, point.ModelYear, point.MassKg, point.Group, point.Summary, point.X, point.Y,
        }[..columns.Length]);
        return new ExportTable("explore", columns, rows, query, [MethodEdition.Current]);
    }
}
