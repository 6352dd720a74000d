using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Reviews;

/// <summary>Whether a run's current rating is approved.</summary>
/// <param name="Test">Test code.</param>
/// <param name="RatingId">Number of the current rating.</param>
/// <param name="ReductionId">Number of the reduction it was made from.</param>
/// <param name="ApprovedBy">Who approved it; null where it is not approved.</param>
/// <param name="ApprovedAt">When; null where it is not approved.</param>
/// <param name="WhyNot">Why there is no standing approval, or null.</param>
internal sealed record ApprovalStanding(string Test, long RatingId, long ReductionId, string? ApprovedBy, DateTimeOffset? ApprovedAt, string? WhyNot)
{
    public bool Approved => ApprovedBy is not null;
}

/// <summary>Standing approvals: what a release builds on. An approval lapses with a new reduction or rating, a withdrawn signature or a new concern.</summary>
internal static class ApprovalIndex
{
    /// <summary>By test code; runs without a package are left out.</summary>
    public static async Task<IReadOnlyDictionary<string, ApprovalStanding>> Load(
        ProgrammeDb context, IReadOnlyCollection<string> tests, DateTimeOffset now, CancellationToken cancellation)
    {
        var reviews = await ReviewIndex.Load(context, tests, cancellation);
        return reviews.Values.ToDictionary(review => review.Test, review =>
        {
            var standing = review.Standing(now);
            return standing is { Approved: true, Approval: { } act }
                ? new ApprovalStanding(review.Test, standing.Rating.RatingId, standing.Rating.ReductionId, act.By, act.At, null)
                : new ApprovalStanding(
                    review.Test, standing.Rating.RatingId, standing.Rating.ReductionId, null, null,
                    standing.Suspended ?? (standing.Missing.Count > 0 ? standing.Missing[0] : "Nobody has approved the rating."));
        }, StringComparer.Ordinal);
    }
}
