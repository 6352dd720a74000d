using Toepan.Api.Security;
using Toepan.Domain.Ratings.Reviews;

namespace Toepan.Api.Ratings.Reviews;

/// <summary>Which roles do what in a review.</summary>
internal static class ReviewAccess
{
    /// <summary>Null where the viewer's roles allow the act, else the refusal.</summary>
    public static Failure? To(Viewer viewer, ReviewActKind kind) => kind == ReviewActKind.Approve
        ? viewer.Is(Role.Manager, Role.Administrator) ? null : Failure.Forbidden("approve ratings")
        : viewer.Is(Role.Reviewer, Role.Manager, Role.Administrator) ? null : Failure.Forbidden("review runs");

    /// <summary>Every act the viewer may not do now, with the reason; see <see cref="RunReviewDetail.Key"/>.</summary>
    public static IReadOnlyDictionary<string, string> Refusals(Viewer viewer, ReviewSituation situation)
    {
        var refusals = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var request in Requests(viewer.Name, situation))
        {
            if (To(viewer, request.Kind)?.Detail is { } forbidden)
            {
                refusals[RunReviewDetail.Key(request.Kind, request.Part, request.Concern)] = forbidden;
            }
            else if (ReviewRules.Refusal(request, situation) is { } no)
            {
                refusals[RunReviewDetail.Key(request.Kind, request.Part, request.Concern)] = no;
            }
        }

        return refusals;
    }

    private static IEnumerable<ReviewRequest> Requests(string by, ReviewSituation situation) =>
    [
        .. Enum.GetValues<ReviewPart>().SelectMany(part => new[] { new ReviewRequest(ReviewActKind.Sign, part, null, by), new ReviewRequest(ReviewActKind.SendBack, part, null, by) }),
        new(ReviewActKind.AcceptRun, null, null, by),
        .. situation.Standing.Concerns.Select(one => new ReviewRequest(ReviewActKind.AcceptConcern, null, one.Concern.Key, by)),
        new(ReviewActKind.Approve, null, null, by),
    ];
}
