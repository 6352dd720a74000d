using Microsoft.EntityFrameworkCore;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Packages;
using Toepan.Api.Programme;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Measures;

namespace Toepan.Api.Measures;

/// <summary>What was reduced from a run.</summary>
public sealed class MeasureService(IDbContextFactory<ProgrammeDb> contexts, TimeProvider time)
{
    /// <summary>All measures of the current reduction (or an earlier one), in the reducer's order. It is noted that the viewer has seen them.</summary>
    public Task<Outcome<IReadOnlyList<Measure>>> Get(
        Viewer viewer, string test, long? reduction = null, CancellationToken cancellation = default) =>
        OfCurrent<IReadOnlyList<Measure>>(viewer, test, async (context, current) =>
        {
            await RepeatIndex.NoteSeen(context, viewer, test, time.GetUtcNow(), cancellation);
            var wanted = reduction ?? current.ReductionId;
            return await context.Set<ReductionRow>().AnyAsync(row => row.Id == wanted && row.Test == test, cancellation)
                ? Outcome.List<Measure>(await CurrentRun.ReadMeasures(context, wanted, cancellation))
                : Failure.NotFound($"reduction of test '{test}'", $"{wanted}");
        }, cancellation);

    /// <summary>Alignment and displacements of the current reduction.</summary>
    public Task<Outcome<StructureResult>> Structure(Viewer viewer, string test, CancellationToken cancellation = default) =>
        OfCurrent<StructureResult>(viewer, test, async (context, current) =>
            (await CurrentRun.ReadReduction(context, current.ReductionId, cancellation)).Structure, cancellation);

    /// <summary>Every reduction of the run, latest first.</summary>
    public Task<Outcome<IReadOnlyList<ReductionSummary>>> Reductions(Viewer viewer, string test, CancellationToken cancellation = default) =>
        OfCurrent<IReadOnlyList<ReductionSummary>>(viewer, test, async (context, current) =>
            Outcome.List<ReductionSummary>(await ReadReductions(context, current, cancellation)), cancellation);

    internal static async Task<List<ReductionSummary>> ReadReductions(ProgrammeDb context, CurrentRun current, CancellationToken cancellation)
    {
        var rows = await context.Set<CurrentRatingRow>().AsNoTracking()
            .Where(row => row.Test == current.Test)
            .OrderByDescending(row => row.Id)
            .Select(row => new { row.Rating!.Overall, Reduction = row.Rating.Reduction! })
            .ToListAsync(cancellation);
        return rows.ConvertAll(row => new ReductionSummary(
            row.Reduction.Id, row.Reduction.PackageSha256, row.Reduction.MethodEdition, row.Reduction.ProcedureEdition, row.Reduction.Runtime,
            row.Reduction.Commit, row.Reduction.At, row.Reduction.By, row.Reduction.What, row.Reduction.Why,
            StoredJson.Read<ChannelFlag[]>(row.Reduction.Flags), row.Reduction.Id == current.ReductionId, row.Reduction.Valid, row.Overall));
    }

    private async Task<Outcome<T>> OfCurrent<T>(
        Viewer viewer, string test, Func<ProgrammeDb, CurrentRun, Task<Outcome<T>>> read, CancellationToken cancellation)
        where T : class
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await CurrentRun.Find(context, test, cancellation) is { } current
            ? await read(context, current)
            : Failure.NotFound("test", test);
    }
}
