using System.Globalization;
using System.Text;

namespace Toepan.Api.Analysis;

/// <summary>Vehicles × measures as text/csv: a line a row, a column a measure; invariant culture; absent = empty.</summary>
internal static class ClassMeasureCsv
{
    public static string Write(ClassMeasures table)
    {
        var text = new StringBuilder();
        Line(text, ["vehicle", "make", "model", "test", "kind", "valid", "position", "seat", "dummy", "modelYear", "testMassKg", .. table.Measures]);
        foreach (var row in table.Rows)
        {
            Line(text, [
                row.Vehicle.Key, row.Vehicle.Make, row.Vehicle.Model, row.Test, row.Kind == ResultKind.Run ? "run" : "summary", row.Valid is { } valid ? valid ? "true" : "false" : null,
                row.Position?.ToString(CultureInfo.InvariantCulture), row.Seat, row.Dummy, row.ModelYear?.ToString(CultureInfo.InvariantCulture),
                row.TestMassKg?.ToString("R", CultureInfo.InvariantCulture),
                .. row.Values.Select(value => value?.ToString("R", CultureInfo.InvariantCulture))]);
        }

        return text.ToString();
    }

    private static void Line(StringBuilder text, IEnumerable<string?> fields) => text.AppendJoin(',', fields.Select(Field)).Append('\n');

    // A spreadsheet would take a text that starts like a formula for one; an apostrophe keeps it a text.
    private static string Field(string? value)
    {
        if (string.IsNullOrEmpty(value))
        {
            return "";
        }

        var safe = value[0] is '=' or '+' or '@' || (value[0] == '-' && !double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out _))
            ? $"'{value}"
            : value;
        return safe.AsSpan().IndexOfAny("\",\r\n") < 0 ? safe : $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
