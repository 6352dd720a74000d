using Microsoft.EntityFrameworkCore;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings.Reviews;
using Toepan.Api.Store;
using Toepan.Domain.Programme.Equipment;
using Toepan.Domain.Ratings.Reviews;

namespace Toepan.Api.Programme;

/// <summary>The review of a run, and who uploaded its package.</summary>
internal sealed record BoardReview(ReviewStanding Standing, string Uploader);

/// <summary>A piece of equipment and the last day its calibration holds.</summary>
internal sealed record BoardCalibration(long Id, EquipmentKind Kind, string Serial, DateOnly DueOn);

/// <summary>Everything the board is made of, at one moment.</summary>
/// <param name="Now">The moment.</param>
/// <param name="Vehicles">Vehicles by key.</param>
/// <param name="AllRuns">Runs by test code.</param>
/// <param name="AllPlanned">Planned runs that are not made, by date.</param>
/// <param name="SharedFrom">Vehicles that have another's rating → that vehicle.</param>
/// <param name="Decided">Runs with a decision about a repeat.</param>
/// <param name="Calibrations">Equipment in use and the day its latest calibration holds to.</param>
/// <param name="Releases">What the way of sheets to the public asks for.</param>
/// <param name="Reviews">Where the review of each run's current rating stands, and who uploaded its package.</param>
internal sealed record BoardFacts(
    DateTimeOffset Now, IReadOnlyList<VehicleRow> Vehicles, IReadOnlyList<TestRunSummary> AllRuns, IReadOnlyList<PlannedRun> AllPlanned,
    IReadOnlyDictionary<string, string> SharedFrom, IReadOnlySet<string> Decided, IReadOnlyDictionary<string, BoardReview> Reviews,
    IReadOnlyList<BoardCalibration> Calibrations, BoardReleases Releases)
{
    public ILookup<string, TestRunSummary> Runs { get; } = AllRuns.ToLookup(run => run.Vehicle.Key);

    public ILookup<string, PlannedRun> Planned { get; } = AllPlanned.ToLookup(plan => plan.Vehicle.Key);

    public DateOnly Today => DateOnly.FromDateTime(Now.UtcDateTime);

    /// <summary>Whole days since then.</summary>
    public int Days(DateTimeOffset since) => Math.Max(0, (int)(Now - since).TotalDays);

    public static async Task<BoardFacts> Load(ProgrammeDb context, DateTimeOffset now, CancellationToken cancellation)
    {
        var vehicles = await InProgramme(context).AsNoTracking().OrderBy(row => row.Key).ToListAsync(cancellation);
        var runs = await RunIndex.Load(context, context.Set<TestRunRow>(), cancellation);
        var plans = await PlanIndex.Load(context, context.Set<PlannedRunRow>(), cancellation);
        var carried = await context.Set<CarryOverRow>().AsNoTracking().ToDictionaryAsync(row => row.VehicleKey, row => row.FromKey, cancellation);
        foreach (var twin in await context.Set<TwinRow>().AsNoTracking().ToListAsync(cancellation))
        {
            carried[twin.TwinKey] = twin.VehicleKey;
        }

        var decided = await context.Set<RepeatDecisionRow>().Select(row => row.Test).Distinct().ToListAsync(cancellation);
        return new BoardFacts(
            now, vehicles, runs, [.. plans.Where(plan => !plan.PackageStored)], carried, decided.ToHashSet(), await LoadReviews(context, now, cancellation),
            await context.Set<EquipmentRow>().AsNoTracking().Where(row => row.RetiredOn == null && row.Calibrations.Any())
                .Select(row => new BoardCalibration(row.Id, row.Kind, row.Serial, row.Calibrations.OrderByDescending(one => one.On).ThenByDescending(one => one.DueOn).First().DueOn))
                .ToListAsync(cancellation),
            await BoardReleases.Load(context, now, cancellation));
    }

    private static async Task<IReadOnlyDictionary<string, BoardReview>> LoadReviews(ProgrammeDb context, DateTimeOffset now, CancellationToken cancellation)
    {
        var tests = await context.Set<TestRunRow>().Select(run => run.Test).ToListAsync(cancellation);
        var reviews = await ReviewIndex.Load(context, tests, cancellation);
        var current = reviews.Values.Select(review => review.Spans[^1].Rating.ReductionId).ToList();
        var uploaders = await context.Set<ReductionRow>().Where(row => current.Contains(row.Id))
            .Join(context.Set<PackageRow>(), row => row.PackageSha256, package => package.Sha256, (row, package) => new { row.Test, package.UploadedBy })
            .ToDictionaryAsync(row => row.Test, row => row.UploadedBy, cancellation);
        return reviews.Values.ToDictionary(review => review.Test, review => new BoardReview(review.Standing(now), uploaders[review.Test]));
    }

    // A vehicle that only historic results know is not in the programme until a run of it is made or planned.
    private static IQueryable<VehicleRow> InProgramme(ProgrammeDb context) => context.Set<VehicleRow>().Where(row =>
        !context.Set<HistoricOriginRow>().Any(origin => origin.Kind == HistoricKind.Vehicle && origin.Key == row.Key)
        || row.PlannedDate != null
        || context.Set<TestRunRow>().Any(run => run.VehicleKey == row.Key)
        || context.Set<PlannedRunRow>().Any(plan => plan.VehicleKey == row.Key));
}
