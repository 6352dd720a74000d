using Microsoft.EntityFrameworkCore;
using Toepan.Api.Analysis.Historic.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Analysis.Historic;

namespace Toepan.Api.Analysis.Historic;

/// <summary>Historic results as stored.</summary>
internal static class ResultIndex
{
    /// <summary>Batches that count.</summary>
    public static IQueryable<ResultBatchRow> Live(ProgrammeDb context) =>
        context.Set<ResultBatchRow>().Where(batch => !context.Set<ResultWithdrawalRow>().Any(gone => gone.BatchId == batch.Id));

    /// <summary>Runs of batches that count.</summary>
    public static IQueryable<SummaryRunRow> LiveRuns(ProgrammeDb context) =>
        context.Set<SummaryRunRow>().Where(run => !context.Set<ResultWithdrawalRow>().Any(gone => gone.BatchId == run.BatchId));

    /// <summary>The keys of one kind that only historic results brought.</summary>
    public static IQueryable<string> Origins(ProgrammeDb context, HistoricKind kind) =>
        context.Set<HistoricOriginRow>().Where(row => row.Kind == kind).Select(row => row.Key);

    /// <summary>What the programme knows of a file's tests, vehicles, classes and procedures; the batch to be replaced counts no longer.</summary>
    public static async Task<KnownResults> Known(
        ProgrammeDb context, ProgrammeRules rules, IReadOnlyList<HistoricRun> runs, long? replaced, CancellationToken cancellation)
    {
        string[] tests = [.. runs.Select(run => run.Test)];
        string[] vehicles = [.. runs.Select(run => run.Vehicle).Distinct()];
        var stored = await LiveRuns(context).Where(run => tests.Contains(run.Test) && run.BatchId != replaced)
            .Select(run => new { run.Test, run.Digest }).ToDictionaryAsync(run => run.Test, run => run.Digest, cancellation);
        var full = await context.Set<TestRunRow>().Where(run => tests.Contains(run.Test)).Select(run => run.Test).ToListAsync(cancellation);
        var known = await context.Set<VehicleRow>().AsNoTracking().Where(row => vehicles.Contains(row.Key)).ToDictionaryAsync(row => row.Key, cancellation);
        var classes = await context.Set<VehicleClassRow>().Select(row => row.Key).ToListAsync(cancellation);
        var procedures = await Origins(context, HistoricKind.Procedure).ToListAsync(cancellation);
        return new KnownResults(known, classes.ToHashSet(), procedures.Concat(rules.Procedures.Keys).ToHashSet(), stored, full.ToHashSet());
    }
}
