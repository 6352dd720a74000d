using System.Globalization;
using Toepan.Api.Programme.Lists;

namespace Toepan.Api.Analysis.Explore;

/// <summary>The runs of an answer as text/csv: a line a run, units in the heads; invariant culture; absent = empty.</summary>
internal static class ExploreCsv
{
    public static string Write(ExploreAnswer answer)
    {
        var second = answer.Question.Y;
        var text = new System.Text.StringBuilder();
        Line(text, ["test", "vehicle", "title", "class", "modelYear", "massKg", "group", "summary", Head(answer.Question.X, answer.XUnit), .. second is null ? [] : new[] { Head(second, answer.YUnit!) }]);
        foreach (var point in answer.Points)
        {
            Line(text, [
                Safe(point.Test), Safe(point.Vehicle), Safe(point.Title), Safe(point.Class), point.ModelYear?.ToString(CultureInfo.InvariantCulture),
                Number(point.MassKg), Safe(point.Group), point.Summary ? "true" : "false", Number(point.X), .. second is null ? [] : new[] { Number(point.Y) }]);
        }

        return text.ToString();
    }

    private static void Line(System.Text.StringBuilder text, IEnumerable<string?> fields) => text.AppendJoin(',', fields).Append("\r\n");

    private static string Safe(string value)
    {
        var safe = SafeCell.Write(value);
        return safe.AsSpan().IndexOfAny("\",\r\n") < 0 ? safe : $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }

    private static string Head(string code, string unit) => unit.Length > 0 ? $"{code} [{unit}]" : code;

    private static string? Number(double? value) => value is { } number && double.IsFinite(number) ? number.ToString("R", CultureInfo.InvariantCulture) : null;
}
