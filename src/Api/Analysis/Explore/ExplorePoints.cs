using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Analysis.Explore;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Analysis.Explore;

/// <summary>Stored runs → the occupants a question covers, by test and position.</summary>
internal static class ExplorePoints
{
    public static async Task<IReadOnlyList<ExplorePoint>> Load(
        ProgrammeDb context, ExploreQuestion question, IReadOnlyDictionary<string, string> classTitles, CancellationToken cancellation)
    {
        string[] codes = question.Y is { } second ? [question.X, second] : [question.X];
        var classes = question.Classes.ToList();
        var runs = await context.Set<CurrentRatingRow>().AsNoTracking()
            .Where(current => !context.Set<CurrentRatingRow>().Any(later => later.Test == current.Test && later.Id > current.Id))
            .Join(context.Set<TestRunRow>(), current => current.Test, run => run.Test, (current, run) => new { current, run })
            .Where(row => (classes.Count == 0 || classes.Contains(row.run.Vehicle!.ClassKey)) && (question.Procedure == null || row.run.Procedure == question.Procedure))
            .Select(row => new Run(
                row.run.Test, row.run.Vehicle!, row.run.Procedure, row.run.Date, row.run.Occupants, row.current.Rating!.Valid, row.current.Rating.Overall, row.current.Rating.ReductionId))
            .ToListAsync(cancellation);
        runs = Chosen(runs, question);
        var reductions = runs.ConvertAll(run => run.Reduction);
        var values = (await context.Set<MeasureRow>().AsNoTracking()
            .Where(row => reductions.Contains(row.ReductionId) && codes.Contains(row.Code))
            .Select(row => new { row.ReductionId, row.Code, row.Position, row.Value }).ToListAsync(cancellation))
            .ToLookup(row => (row.ReductionId, row.Code));
        return
        [
            .. runs.OrderBy(run => run.Test, StringComparer.Ordinal).SelectMany(run => Seats(run, question.Seat).Select(seat => Point(run, seat, question, classTitles,
                code => values[(run.Reduction, code)].FirstOrDefault(row => row.Position is null || row.Position == seat.Position)?.Value ?? double.NaN))),
        ];
    }

    private sealed record Run(string Test, VehicleRow Vehicle, string Procedure, DateOnly Date, string Occupants, bool Valid, ProtectionLevel? Overall, long Reduction);

    private static List<Run> Chosen(List<Run> runs, ExploreQuestion question)
    {
        var fit = runs.Where(run => Within(run.Vehicle.ModelYearFrom, question.YearFrom, question.YearTo) && Within((double?)run.Vehicle.KerbMassKg, question.MassFromKg, question.MassToKg));
        return question.Runs switch
        {
            "all" => [.. fit],
            "valid" => [.. fit.Where(run => run.Valid)],
            _ => [.. fit.GroupBy(run => run.Vehicle.Key).SelectMany(group =>
                RatingRuns.Of(group.Select(run => new RatingRun(run.Test, run.Date, run.Valid, (int?)run.Overall))) is { } test ? group.Where(run => run.Test == test) : [])],
        };
    }

    private static bool Within(double? value, double? from, double? to) => (from is null && to is null) || (value is { } known && !(known < from) && !(known > to));

    private static IEnumerable<Occupant> Seats(Run run, string seat)
    {
        var occupants = StoredJson.Read<Occupant[]>(run.Occupants);
        var driver = occupants.FirstOrDefault(occupant => string.Equals(occupant.Seat, "driver", StringComparison.OrdinalIgnoreCase)) ?? occupants.MinBy(occupant => occupant.Position);
        return seat switch { "driver" => occupants.Where(occupant => occupant == driver), "all" => occupants, _ => occupants.Where(occupant => occupant != driver) };
    }

    private static ExplorePoint Point(Run run, Occupant seat, ExploreQuestion question, IReadOnlyDictionary<string, string> titles, Func<string, double> value) => new(
        run.Test, run.Vehicle.Key, RunIndex.Name(run.Vehicle).Title, run.Vehicle.ClassKey, titles[run.Vehicle.ClassKey], run.Vehicle.ModelYearFrom, (double?)run.Vehicle.KerbMassKg,
        question.Group switch
        {
            "class" => titles[run.Vehicle.ClassKey],
            "dummy" => seat.Dummy.ToString(),
            "procedure" => run.Procedure,
            "level" => run.Overall is { } level ? $"{level.Word()} protection" : "not rated",
            "year" => run.Vehicle.ModelYearFrom?.ToString(CultureInfo.InvariantCulture) ?? "year not known",
            _ => "run",
        },
        false, value(question.X), question.Y is { } other ? value(other) : double.NaN);
}
