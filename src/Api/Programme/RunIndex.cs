using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Programme;

/// <summary>Runs as lists show them: identity, current rating, state word and since when.</summary>
internal static class RunIndex
{
    /// <summary>The runs of a query by test code, each with its state.</summary>
    public static async Task<IReadOnlyList<TestRunSummary>> Load(
        ProgrammeDb context, IQueryable<TestRunRow> runs, CancellationToken cancellation)
    {
        var rows = await runs.AsNoTracking().Include(run => run.Vehicle).OrderBy(run => run.Test).ToListAsync(cancellation);
        var tests = rows.ConvertAll(run => run.Test);
        var ratings = await Ratings(context, tests, cancellation);
        var repeated = await context.Set<TestRunRow>()
            .Where(run => run.RepeatOf != null && tests.Contains(run.RepeatOf)).Select(run => run.RepeatOf!).ToListAsync(cancellation);
        return rows.ConvertAll(run => Summary(run, [.. ratings[run.Test]], repeated.Contains(run.Test)));
    }

    private static async Task<ILookup<string, RatedFact>> Ratings(ProgrammeDb context, List<string> tests, CancellationToken cancellation)
    {
        var facts = await context.Set<CurrentRatingRow>().AsNoTracking()
            .Where(current => tests.Contains(current.Test))
            .OrderBy(current => current.Id)
            .Select(current => new RatedFact(
                current.Test, current.At, current.Rating!.Valid, current.Rating.Overall, current.Rating.NotRated,
                current.Rating.Reduction!.ProblemCount))
            .ToListAsync(cancellation);
        return facts.ToLookup(fact => fact.Test);
    }

    private static TestRunSummary Summary(TestRunRow run, List<RatedFact> ratings, bool repeated)
    {
        var current = ratings[^1];
        return new TestRunSummary(
            run.Test, Name(run.Vehicle!), run.Procedure, run.Date, run.Laboratory, run.RepeatOf, current.Valid, current.Overall,
            current.NotRated, State(current, repeated).Word(), Since(ratings, repeated), StoredJson.Read<Occupant[]>(run.Occupants),
            current.ProblemCount);
    }

    /// <summary>Since the first of the latest unbroken series of ratings that give this state.</summary>
    private static DateTimeOffset Since(List<RatedFact> ratings, bool repeated)
    {
        var state = State(ratings[^1], repeated);
        var first = ratings.Count - 1;
        while (first > 0 && State(ratings[first - 1], repeated) == state)
        {
            first--;
        }

        return ratings[first].At;
    }

    private static TestState State(RatedFact fact, bool repeated) => TestStates.Of(new TestFacts
    {
        Crashed = true, PackageReceived = true, Valid = fact.Valid, HasOverallLevel = fact.Overall is not null, Repeated = repeated,
    });

    public static VehicleName Name(VehicleRow vehicle) => new(vehicle.Key, vehicle.Make, vehicle.Model, vehicle.ClassKey);

    private sealed record RatedFact(
        string Test, DateTimeOffset At, bool Valid, ProtectionLevel? Overall, string? NotRated, int ProblemCount);
}
