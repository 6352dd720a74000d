using MiniExcelLibs;
using Toepan.Api.Programme.Lists;

namespace Toepan.Api.Export;

/// <summary>A table as a spreadsheet (xlsx): sheet <c>data</c>, and sheet <c>about</c> with query, method editions and the unit of every column.</summary>
internal static class SheetExport
{
    public static Task Write(ExportTable table, Stream target, CancellationToken cancellation)
    {
        var about = table.About.Where(pair => pair.Key != "units").Select(pair => Named(pair.Key, pair.Value))
            .Concat(table.Columns.Where(column => column.Unit.Length > 0).Select(column => Named($"unit of {column.Name}", column.Unit)));
        var sheets = new Dictionary<string, object> { ["data"] = Rows(table, cancellation), ["about"] = about.ToList() };
        return target.SaveAsAsync(sheets, cancellationToken: cancellation);
    }

    private static IEnumerable<Dictionary<string, object?>> Rows(ExportTable table, CancellationToken cancellation)
    {
        var any = false;
        foreach (var row in table.Rows)
        {
            cancellation.ThrowIfCancellationRequested();
            any = true;
            yield return Keyed(table, row);
        }

        if (!any)
        {
            yield return Keyed(table, new object?[table.Columns.Count]);
        }
    }

    private static Dictionary<string, object?> Keyed(ExportTable table, object?[] row)
    {
        var cells = new Dictionary<string, object?>(row.Length);
        for (var i = 0; i < row.Length; i++)
        {
            cells[table.Columns[i].Name] = row[i] is string text ? SafeCell.Write(text) : row[i] is double number && !double.IsFinite(number) ? null : row[i];
        }

        return cells;
    }

    private static Dictionary<string, object?> Named(string name, string value) => new() { ["name"] = name, ["value"] = SafeCell.Write(value) };
}
