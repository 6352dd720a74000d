using Microsoft.EntityFrameworkCore;
using Toepan.Api.Analysis.Historic.Tables;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Analysis.Historic;

/// <summary>Historic results as lists: batches, and the summaries that count.</summary>
public sealed class ResultListService(IDbContextFactory<ProgrammeDb> contexts)
{
    public const int PageSize = 100;
    private const int MostPages = 10_000;

    /// <summary>Batches, the latest first.</summary>
    public async Task<Outcome<IReadOnlyList<ResultBatch>>> Batches(Viewer viewer, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return new(null, refusal);
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return Outcome.List<ResultBatch>(await Batches(context, null, cancellation));
    }

    /// <summary>One batch.</summary>
    public async Task<Outcome<ResultBatch>> Batch(Viewer viewer, long id, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await Batches(context, id, cancellation) is [var batch] ? batch : Failure.NotFound("batch of results", FormattableString.Invariant($"{id}"));
    }

    /// <summary>A page of the summary results that count, by test code; of one batch also where it is withdrawn.</summary>
    public async Task<Outcome<SummaryPage>> List(Viewer viewer, SummaryFilter filter, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        if (filter.Page is < 1 or > MostPages)
        {
            return Failure.BadRequest($"page is {filter.Page}; it is 1 to {MostPages}.");
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var wanted = Filtered(context, filter);
        var total = await wanted.CountAsync(cancellation);
        var rows = await wanted.OrderBy(pair => pair.Run.Test).ThenBy(pair => pair.Run.BatchId)
            .Skip((filter.Page - 1) * PageSize).Take(PageSize).ToListAsync(cancellation);
        return new SummaryPage(await WithOccupants(context, rows, cancellation), total, filter.Page, PageSize);
    }

    internal static async Task<IReadOnlyList<ResultBatch>> Batches(ProgrammeDb context, long? id, CancellationToken cancellation)
    {
        var gone = await context.Set<ResultWithdrawalRow>().AsNoTracking().ToDictionaryAsync(row => row.BatchId, cancellation);
        var rows = await context.Set<ResultBatchRow>().AsNoTracking().Where(row => id == null || row.Id == id).OrderByDescending(row => row.Id).ToListAsync(cancellation);
        return rows.ConvertAll(row => new ResultBatch(
            row.Id, row.At, row.By, row.Tests, row.Values, row.Sha256, row.Replaces, row.Reason,
            gone.TryGetValue(row.Id, out var end) ? new Withdrawal(end.At, end.By, end.Reason) : null));
    }

    private static IQueryable<RunOfVehicle> Filtered(ProgrammeDb context, SummaryFilter filter)
    {
        var runs = filter.Batch is { } batch ? context.Set<SummaryRunRow>().Where(run => run.BatchId == batch) : ResultIndex.LiveRuns(context);
        return runs.AsNoTracking()
            .Where(run => (filter.Vehicle == null || run.VehicleKey == filter.Vehicle) && (filter.Test == null || run.Test == filter.Test))
            .Join(context.Set<VehicleRow>(), run => run.VehicleKey, vehicle => vehicle.Key, (run, vehicle) => new RunOfVehicle { Run = run, Vehicle = vehicle })
            .Where(pair => filter.Class == null || pair.Vehicle.ClassKey == filter.Class);
    }

    private static async Task<IReadOnlyList<SummaryResult>> WithOccupants(ProgrammeDb context, List<RunOfVehicle> rows, CancellationToken cancellation)
    {
        var (batches, numbers) = (rows.Select(pair => pair.Run.BatchId).Distinct().ToArray(), rows.Select(pair => pair.Run.Number).Distinct().ToArray());
        var occupants = (await context.Set<SummaryOccupantRow>().AsNoTracking()
            .Where(row => batches.Contains(row.BatchId) && numbers.Contains(row.Number)).ToListAsync(cancellation)).ToLookup(row => (row.BatchId, row.Number));
        var values = await context.Set<SummaryMeasureRow>()
            .Where(row => batches.Contains(row.BatchId) && numbers.Contains(row.Number))
            .GroupBy(row => new { row.BatchId, row.Number })
            .Select(group => new { group.Key.BatchId, group.Key.Number, Count = group.Count() }).ToListAsync(cancellation);
        var counts = values.ToDictionary(group => (group.BatchId, group.Number), group => group.Count);
        return rows.ConvertAll(pair => new SummaryResult(
            pair.Run.Test, pair.Run.BatchId, pair.Vehicle.Key, pair.Vehicle.Make, pair.Vehicle.Model, pair.Vehicle.ClassKey, pair.Run.ModelYear, pair.Run.Procedure,
            pair.Run.Date, pair.Run.TestMassKg,
            [.. occupants[(pair.Run.BatchId, pair.Run.Number)].OrderBy(row => row.Position).Select(row => new SummaryOccupant(row.Position, row.Dummy))],
            counts.GetValueOrDefault((pair.Run.BatchId, pair.Run.Number))));
    }

    private sealed class RunOfVehicle
    {
        public SummaryRunRow Run { get; init; } = null!;

        public VehicleRow Vehicle { get; init; } = null!;
    }
}
