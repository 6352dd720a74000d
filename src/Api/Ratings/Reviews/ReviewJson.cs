using Toepan.Domain.Ratings;
using Toepan.Domain.Ratings.Reviews;

namespace Toepan.Api.Ratings.Reviews;

/// <summary>An act to record, as the contract reads it.</summary>
public sealed record NewReviewActJson(ReviewActKind? Kind, ReviewPart? Part, string? Concern, string? Note, long? RatingId);

/// <summary>Why an act is taken back.</summary>
public sealed record ReviewWithdrawalJson(string? Reason);

/// <summary>A part of the review: the act it stands by, or null.</summary>
public sealed record ReviewPartJson(ReviewPart Part, bool Signed, bool SentBack, ReviewAct? Act);

/// <summary>A concern that an approval needs accepted.</summary>
public sealed record ReviewConcernJson(string Key, string Text, DateTimeOffset Since, ReviewAct? Acceptance);

/// <summary>The review of a run as the contract writes it.</summary>
public sealed record ReviewJson(
    string Test, long RatingId, long ReductionId, bool Valid, ProtectionLevel? Overall, IReadOnlyList<ReviewPartJson> Parts, ReviewAct? Acceptance,
    IReadOnlyList<ReviewConcernJson> Concerns, bool Approved, ReviewAct? Approval, string? Suspended, IReadOnlyList<string> Missing,
    IReadOnlyList<ReviewAct> Earlier, IReadOnlyDictionary<string, string> Refusals)
{
    public static ReviewJson Of(RunReviewDetail detail) => new(
        detail.Test, detail.Standing.Rating.RatingId, detail.Standing.Rating.ReductionId, detail.Standing.Rating.Valid, detail.Standing.Rating.Overall,
        [.. detail.Standing.Parts.Select(part => new ReviewPartJson(part.Part, part.Signed, part.SentBack, part.Act))], detail.Standing.Acceptance,
        [.. detail.Standing.Concerns.Select(one => new ReviewConcernJson(one.Concern.Key, one.Concern.Text, one.Concern.Since, one.Acceptance))],
        detail.Standing.Approved, detail.Standing.Approval, detail.Standing.Suspended, detail.Standing.Missing, detail.Earlier, detail.Refusals);
}
