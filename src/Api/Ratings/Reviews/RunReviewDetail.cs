using Toepan.Domain.Ratings.Reviews;

namespace Toepan.Api.Ratings.Reviews;

/// <summary>The review of a run as one viewer sees it.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Standing">Where the review of the current rating stands.</param>
/// <param name="Earlier">Acts about earlier ratings, which count no longer, latest first.</param>
/// <param name="Involved">Who had a hand in what is reviewed.</param>
/// <param name="Refusals">What the viewer may not do and why; what is not in it they may.</param>
public sealed record RunReviewDetail(
    string Test, ReviewStanding Standing, IReadOnlyList<ReviewAct> Earlier, IReadOnlyList<Involvement> Involved, IReadOnlyDictionary<string, string> Refusals)
{
    /// <summary>Key of an act in <see cref="Refusals"/>: <c>sign/conduct</c>, <c>sendBack/film</c>, <c>acceptRun</c>, <c>acceptConcern/…</c>, <c>approve</c>.</summary>
    public static string Key(ReviewActKind kind, ReviewPart? part, string? concern)
    {
        var word = char.ToLowerInvariant(kind.ToString()[0]) + kind.ToString()[1..];
        return part is { } one ? $"{word}/{one.ToString().ToLowerInvariant()}" : concern is not null ? $"{word}/{concern}" : word;
    }
}

/// <summary>An act somebody wants to record.</summary>
/// <param name="Kind">What.</param>
/// <param name="Part">Part signed or sent back.</param>
/// <param name="Concern">Concern accepted.</param>
/// <param name="Note">Note; a reason is required for everything but a signature and an approval.</param>
/// <param name="RatingId">The rating they have in front of them.</param>
public sealed record NewReviewAct(ReviewActKind Kind, ReviewPart? Part, string? Concern, string? Note, long RatingId);
