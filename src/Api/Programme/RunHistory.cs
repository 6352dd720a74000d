using Microsoft.EntityFrameworkCore;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Programme;

/// <summary>What happened to a run: every change made a reduction, and every reduction says who and why.</summary>
internal static class RunHistory
{
    public static async Task<IReadOnlyList<HistoryEntry>> Read(ProgrammeDb context, string test, CancellationToken cancellation) =>
        await context.Set<CurrentRatingRow>().AsNoTracking()
            .Where(current => current.Test == test)
            .OrderByDescending(current => current.Id)
            .Select(current => new HistoryEntry(
                current.At, current.Rating!.Reduction!.By, current.Rating.Reduction.What, current.Rating.Reduction.Why))
            .ToListAsync(cancellation);
}
