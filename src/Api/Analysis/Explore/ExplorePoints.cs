using System.Globalization;
using Toepan.Domain.Analysis.Explore;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Analysis.Explore;

/// <summary>Rows of the programme → the occupants a question covers, by test and position.</summary>
internal static class ExplorePoints
{
    /// <summary>The question of the programme's measures that a question over the programme needs.</summary>
    public static MeasureQuestion Asked(ExploreQuestion question) => new()
    {
        Classes = question.Classes, Measures = question.Y is { } second ? [question.X, second] : [question.X], Seat = question.Seat,
        Procedure = question.Procedure, Runs = Enum.Parse<RunChoice>(question.Runs, ignoreCase: true),
    };

    public static IReadOnlyList<ExplorePoint> Of(MeasureRows rows, ExploreQuestion question, IReadOnlyDictionary<string, string> classTitles)
    {
        var (x, y) = (0, rows.Measures.Count - 1);
        return
        [
            .. rows.Rows
                .Where(row => (question.Summaries || row.Kind == ResultKind.Run)
                    && Within(row.ModelYear, question.YearFrom, question.YearTo) && Within(row.MassKg, question.MassFromKg, question.MassToKg))
                .Select(row => new ExplorePoint(
                    row.Test, row.Vehicle.Key, row.Vehicle.Title, row.Vehicle.Class, classTitles[row.Vehicle.Class], row.ModelYear, row.MassKg,
                    Group(row, question.Group, classTitles), row.Kind == ResultKind.Summary, row.Values[x] ?? double.NaN,
                    question.Y is null ? double.NaN : row.Values[y] ?? double.NaN)),
        ];
    }

    private static bool Within(double? value, double? from, double? to) => (from is null && to is null) || (value is { } known && !(known < from) && !(known > to));

    private static string Group(MeasuredRow row, string group, IReadOnlyDictionary<string, string> classTitles) => group switch
    {
        "class" => classTitles[row.Vehicle.Class],
        "dummy" => row.Dummy ?? "dummy not known",
        "procedure" => row.Procedure,
        "level" => row.Overall is { } level ? $"{level.Word()} protection" : "not rated",
        "year" => row.ModelYear?.ToString(CultureInfo.InvariantCulture) ?? "year not known",
        _ => row.Kind == ResultKind.Run ? "run" : "summary result",
    };
}
