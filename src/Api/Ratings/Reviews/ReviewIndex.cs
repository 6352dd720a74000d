using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Programme;
using Toepan.Domain.Programme.Equipment;
using Toepan.Domain.Ratings.Reviews;

namespace Toepan.Api.Ratings.Reviews;

/// <summary>Reviews of many runs at once: every rating that was current with the acts about it, and the concerns about the run.</summary>
internal static class ReviewIndex
{
    /// <summary>One run's review in time.</summary>
    public sealed record RunReview(string Test, IReadOnlyList<RatingSpan> Spans, IReadOnlyList<RunConcern> Concerns)
    {
        /// <summary>Where the review of the current rating stands.</summary>
        public ReviewStanding Standing(DateTimeOffset at) => ReviewStanding.Of(Spans[^1].Rating, Spans[^1].Acts, Concerns, at);

        public IEnumerable<FactChange> Changes => ReviewTimeline.Changes(Spans, Concerns);
    }

    /// <summary>By test code; runs without a rating are left out.</summary>
    public static async Task<IReadOnlyDictionary<string, RunReview>> Load(ProgrammeDb context, IReadOnlyCollection<string> tests, CancellationToken cancellation)
    {
        var ratings = await context.Set<CurrentRatingRow>().AsNoTracking().Where(row => tests.Contains(row.Test)).OrderBy(row => row.Id)
            .Select(row => new { row.Test, row.At, Rating = new ReviewedRating(row.RatingId, row.Rating!.ReductionId, row.Rating.Valid, row.Rating.Overall, row.Rating.NotRated) })
            .ToListAsync(cancellation);
        var acts = (await context.Set<ReviewActRow>().AsNoTracking().Include(row => row.Withdrawal)
            .Where(row => tests.Contains(row.Test)).OrderBy(row => row.Id).ToListAsync(cancellation)).ToLookup(row => row.RatingId, row => row.ToAct());
        var concerns = await RunConcerns.Load(context, tests, cancellation);
        return ratings.GroupBy(row => row.Test).ToDictionary(
            run => run.Key,
            run => new RunReview(run.Key, [.. run.Select(row => new RatingSpan(row.Rating, row.At, [.. acts[row.Rating.RatingId]]))], [.. concerns[run.Key]]),
            StringComparer.Ordinal);
    }
}
