using System.Globalization;
using System.Text;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings.Schemes;

/// <summary>The runs that change level as CSV (RFC 4180, UTF-8).</summary>
internal static class WhatIfCsv
{
    public static string Write(WhatIf answer)
    {
        var text = new StringBuilder("test,vehicle,class,valid,released,before,after,rule,why\r\n");
        foreach (var change in answer.Changes)
        {
            string[] cells =
            [
                change.Test, change.Vehicle, change.Class, change.Valid ? "true" : "false", change.Released ? "true" : "false", Word(change.Before), Word(change.After),
                change.Rule, change.Why,
            ];
            text.Append(CultureInfo.InvariantCulture, $"{string.Join(',', cells.Select(Cell))}\r\n");
        }

        return text.ToString();
    }

    private static string Word(ProtectionLevel? level) => level?.Word() ?? "not rated";

    // A cell that a spreadsheet would take for a formula is led by an apostrophe.
    private static string Cell(string text)
    {
        var safe = text.Length > 0 && "=+-@\t\r".Contains(text[0], StringComparison.Ordinal) ? $"'{text}" : text;
        return safe.AsSpan().IndexOfAny(",\"\r\n") >= 0 ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : safe;
    }
}
