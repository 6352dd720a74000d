using Microsoft.EntityFrameworkCore;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Recomputations;

/// <summary>Recomputations as their items, steps and events tell them.</summary>
internal static class RecomputationQuery
{
    /// <summary>Latest first; with an id just that one.</summary>
    public static async Task<List<Recomputation>> Load(ProgrammeDb context, long? id, CancellationToken cancellation)
    {
        var rows = await context.Set<RecomputationRow>().AsNoTracking().Where(row => id == null || row.Id == id).OrderByDescending(row => row.Id).ToListAsync(cancellation);
        var items = await context.Set<RecomputationItemRow>().Where(row => id == null || row.RecomputationId == id).GroupBy(row => row.RecomputationId)
            .Select(group => new { group.Key, Count = group.Count() }).ToDictionaryAsync(group => group.Key, group => group.Count, cancellation);
        var steps = (await context.Set<RecomputationStepRow>().Where(row => id == null || row.RecomputationId == id).GroupBy(row => new { row.RecomputationId, row.Outcome })
            .Select(group => new { group.Key.RecomputationId, group.Key.Outcome, Count = group.Count() }).ToListAsync(cancellation)).ToLookup(group => group.RecomputationId);
        var events = (await context.Set<RecomputationEventRow>().AsNoTracking().Where(row => id == null || row.RecomputationId == id).OrderBy(row => row.Id)
            .ToListAsync(cancellation)).ToLookup(row => row.RecomputationId);
        return rows.ConvertAll(row => new Recomputation(
            row.Id, row.Kind, row.Scheme, row.MethodEdition, row.Reason, row.At, row.By, State(events[row.Id].LastOrDefault()?.Event), items.GetValueOrDefault(row.Id),
            steps[row.Id].Sum(step => step.Count), Of(row.Id, StepOutcome.Released), Of(row.Id, StepOutcome.Failed),
            events[row.Id].LastOrDefault(one => one.Event == RecomputationEvent.Finished)?.At));

        int Of(long recomputation, StepOutcome outcome) => steps[recomputation].Where(step => step.Outcome == outcome).Sum(step => step.Count);
    }

    public static async Task<RecomputationState> StateOf(ProgrammeDb context, long id, CancellationToken cancellation) => State(
        await context.Set<RecomputationEventRow>().Where(row => row.RecomputationId == id).OrderByDescending(row => row.Id)
            .Select(row => (RecomputationEvent?)row.Event).FirstOrDefaultAsync(cancellation));

    private static RecomputationState State(RecomputationEvent? last) => last switch
    {
        RecomputationEvent.Stopped => RecomputationState.Stopped,
        RecomputationEvent.Finished => RecomputationState.Finished,
        _ => RecomputationState.Running,
    };
}
