using Toepan.Domain.Programme;
using Toepan.Domain.Programme.Equipment;

namespace Toepan.Domain.Ratings.Reviews;

/// <summary>A rating, from when it was current, and the acts about it.</summary>
public sealed record RatingSpan(ReviewedRating Rating, DateTimeOffset From, IReadOnlyList<ReviewAct> Acts);

/// <summary>Ratings, acts and concerns in time → what they changed in the facts of a run.</summary>
public static class ReviewTimeline
{
    /// <summary>
    /// One change at the beginning of each rating and whenever an act, a withdrawal or a concern changes where its review stands. An act
    /// counts for its own rating only, whatever the clock of the machine that wrote it said.
    /// </summary>
    /// <param name="spans">Every rating that was current, in order.</param>
    /// <param name="concerns">Concerns about the run.</param>
    public static IEnumerable<FactChange> Changes(IReadOnlyList<RatingSpan> spans, IReadOnlyList<RunConcern> concerns)
    {
        for (var i = 0; i < spans.Count; i++)
        {
            var until = i + 1 < spans.Count ? spans[i + 1].From : DateTimeOffset.MaxValue;
            foreach (var moment in Moments(spans[i], concerns, until))
            {
                yield return Change(ReviewStanding.Of(spans[i].Rating, spans[i].Acts, concerns, moment), moment < until ? moment : until);
            }
        }
    }

    private static IEnumerable<DateTimeOffset> Moments(RatingSpan span, IReadOnlyList<RunConcern> concerns, DateTimeOffset until) =>
        span.Acts.SelectMany(act => new[] { act.At, act.Withdrawal?.At }).OfType<DateTimeOffset>()
            .Concat(concerns.Select(concern => concern.Since).Where(since => since < until))
            .Where(moment => moment > span.From)
            .Append(span.From)
            .Distinct()
            .Order();

    private static FactChange Change(ReviewStanding standing, DateTimeOffset at) => new(at, facts => facts with
    {
        Crashed = true,
        PackageReceived = true,
        Valid = standing.Rating.Valid,
        HasOverallLevel = standing.Rating.Overall is not null,
        Accepted = standing.Acceptance is not null,
        ReviewOpened = standing.Begun,
        Signatures = standing.Signatures,
        Approved = standing.Approved,
    });
}
