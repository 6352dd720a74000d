using System.Text;
using Toepan.Domain.Packages.Sidecars;

namespace Toepan.Api.Programme.Lists;

/// <summary>Lists as comma-separated values (RFC 4180), UTF-8, with a header.</summary>
internal static class CsvList
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static byte[] Write(IEnumerable<IReadOnlyList<string>> rows)
    {
        var text = new StringBuilder();
        foreach (var row in rows)
        {
            text.AppendJoin(',', row.Select(cell => Quote(SafeCell.Write(cell)))).Append("\r\n");
        }

        return Strict.GetBytes(text.ToString());
    }

    public static CellTable Read(ReadOnlySpan<byte> bytes)
    {
        string text;
        try
        {
            text = Strict.GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            return CellTable.Unreadable("The file is not UTF-8 text.");
        }

        var rows = new List<CellRow>();
        var reader = new CsvReader(text, Separator(text));
        while (reader.Next() is { } record)
        {
            rows.Add(new CellRow(record.Line, [.. record.Fields.Select(SafeCell.Read)]));
        }

        return reader.Flaw is { } flaw
            ? CellTable.Unreadable($"Line {reader.Line}: {flaw}.")
            : new([.. rows.Where(row => !row.Blank)], null);
    }

    /// <summary>Spreadsheets of a decimal-comma country write semicolons: the header tells.</summary>
    private static char Separator(string text)
    {
        var header = text.AsSpan(0, Math.Max(0, text.AsSpan().IndexOfAny('\r', '\n') is var end && end >= 0 ? end : text.Length));
        return header.Contains(';') && !header.Contains(',') ? ';' : ',';
    }

    private static string Quote(string cell) =>
        cell.AsSpan().IndexOfAny("\",;\r\n") >= 0 ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : cell;
}
