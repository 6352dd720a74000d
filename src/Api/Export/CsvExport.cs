using System.Globalization;
using System.Text;
using System.Text.Json;
using Toepan.Api.Programme.Lists;

namespace Toepan.Api.Export;

/// <summary>
/// A table as text/csv (RFC 4180, UTF-8): invariant culture, absent = empty, text that a spreadsheet would take for a formula neutralised. The last column,
/// <c>about</c>, holds in the first row alone a JSON text with query, units and method editions.
/// </summary>
internal static class CsvExport
{
    private const int FlushAt = 1 << 16;

    public static async Task Write(ExportTable table, Stream target, CancellationToken cancellation)
    {
        var text = new StringBuilder();
        text.AppendJoin(',', table.Columns.Select(column => Quoted(column.Name))).Append(",about\r\n");
        var about = Quoted(JsonSerializer.Serialize(table.About));
        foreach (var row in table.Rows)
        {
            text.AppendJoin(',', row.Select(Cell)).Append(',').Append(about).Append("\r\n");
            about = "";
            if (text.Length >= FlushAt)
            {
                await Flush(text, target, cancellation);
            }
        }

        await Flush(text, target, cancellation);
    }

    public static string Cell(object? value) => value switch
    {
        null => "",
        string text => Quoted(SafeCell.Write(text)),
        bool flag => flag ? "true" : "false",
        double number => double.IsFinite(number) ? number.ToString("R", CultureInfo.InvariantCulture) : "",
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => Quoted(SafeCell.Write(value.ToString() ?? "")),
    };

    private static string Quoted(string text) =>
        text.AsSpan().IndexOfAny("\",;\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static async Task Flush(StringBuilder text, Stream target, CancellationToken cancellation)
    {
        await target.WriteAsync(Encoding.UTF8.GetBytes(text.ToString()), cancellation);
        text.Clear();
    }
}
