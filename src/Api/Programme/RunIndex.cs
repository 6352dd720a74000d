using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings.Reviews;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Sheets.Releases.Tables;
using Toepan.Api.Store;
using Toepan.Api.Store.Tables;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;
using Toepan.Domain.Sheets.Releases;

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
        var others = await OtherChanges(context, tests, cancellation);
        var reviews = await ReviewIndex.Load(context, tests, cancellation);
        return rows.ConvertAll(run => Summary(run, [.. ratings[run.Test]], others[run.Test], reviews[run.Test]));
    }

    // What is known of the runs beside their ratings: decisions to repeat, repeats, and what is public by the database's clock.
    private static async Task<ILookup<string, FactChange>> OtherChanges(ProgrammeDb context, List<string> tests, CancellationToken cancellation)
    {
        var decisions = await context.Set<RepeatDecisionRow>().AsNoTracking().Where(row => tests.Contains(row.Test)).OrderBy(row => row.Id)
            .Select(row => new { row.Test, row.Choice, row.DecidedAt }).ToListAsync(cancellation);
        var repeats = await context.Set<TestRunRow>().AsNoTracking().Where(run => run.RepeatOf != null && tests.Contains(run.RepeatOf))
            .Select(run => new { Test = run.RepeatOf!, run.CreatedAt }).ToListAsync(cancellation);
        var released = await context.Set<ReleaseActRow>().AsNoTracking()
            .Where(act => tests.Contains(act.Test) && act.VisibleFrom <= DateTimeOffset.UtcNow
                && context.Set<ReleaseRow>().Any(row => row.Slug == act.Slug && row.Version == act.Version && row.VisibleTo == null))
            .OrderBy(act => act.Version).Select(act => new { act.Test, act.Kind, act.VisibleFrom }).ToListAsync(cancellation);
        return decisions
            .Select(row => (row.Test, Change: new FactChange(row.DecidedAt, facts => facts with { RepeatDecided = row.Choice == RepeatChoice.Repeat })))
            .Concat(repeats.Select(run => (run.Test, Change: new FactChange(run.CreatedAt, facts => facts with { Repeated = true }))))
            .Concat(released.Select(act => (act.Test, Change: new FactChange(act.VisibleFrom, facts => facts with { Released = act.Kind != ReleaseKind.Withdrawal }))))
            .ToLookup(pair => pair.Test, pair => pair.Change);
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

    private static TestRunSummary Summary(TestRunRow run, List<RatedFact> ratings, IEnumerable<FactChange> others, ReviewIndex.RunReview review)
    {
        var current = ratings[^1];
        var reviewed = review.Standing(DateTimeOffset.MaxValue);
        var standing = StateTimeline.Of(run.CreatedAt, [.. ratings.Select(Change), .. others, .. review.Changes]);
        return new TestRunSummary(
            run.Test, Name(run.Vehicle!), run.Procedure, run.Date, run.Laboratory, run.RepeatOf, current.Valid, current.Overall,
            current.NotRated, standing.State.Word(), standing.Since, StoredJson.Read<Occupant[]>(run.Occupants), current.ProblemCount)
        {
            Accepted = reviewed.Acceptance is not null,
            Concerns = [.. reviewed.OpenConcerns.Select(concern => concern.Text)],
        };
    }

    private static FactChange Change(RatedFact fact) => new(fact.At, facts => facts with
    {
        Crashed = true, PackageReceived = true, Valid = fact.Valid, HasOverallLevel = fact.Overall is not null,
    });

    public static VehicleName Name(VehicleRow vehicle) => new(vehicle.Key, vehicle.Make, vehicle.Model, vehicle.ClassKey);

    private sealed record RatedFact(
        string Test, DateTimeOffset At, bool Valid, ProtectionLevel? Overall, string? NotRated, int ProblemCount);
}
