using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;

namespace Toepan.Api.Ratings.Reviews;

/// <summary>Reviewing a run and approving its rating.</summary>
internal static class ReviewEndpoints
{
    public static void MapReviews(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/tests/{test}", "Reviews").ProducesProblem(StatusCodes.Status404NotFound);

        group.MapGet("/reviews", Get).Describe(
            "getReview", "The review of a run", "Parts with their signatures, concerns, approval, what is missing, and what the caller may not do and why.");
        group.MapPost("/reviews", Act).RequireRoles(Role.Reviewer, Role.Manager, Role.Administrator).ProducesProblem(StatusCodes.Status409Conflict).Describe(
            "actOnReview", "Sign, send back, accept or approve",
            "kind: sign or sendBack with part (conduct, data, structure, film), acceptRun, acceptConcern with concern, approve. ratingId is the rating looked at: 409 where another is current. Nobody signs their own work.");
        group.MapPost("/reviews/{act:long}/withdrawal", Withdraw).RequireRoles(Role.Reviewer, Role.Manager, Role.Administrator).ProducesProblem(StatusCodes.Status409Conflict).Describe(
            "withdrawReviewAct", "Take an act of a review back", "Whoever did it, or a manager; a reason is required.");
    }

    private static async Task<Results<Ok<ReviewJson>, ProblemHttpResult>> Get(Viewer viewer, ReviewService reviews, string test, CancellationToken cancellation) =>
        (await reviews.Get(viewer, test, cancellation)).Answer(ReviewJson.Of);

    private static async Task<Results<Ok<ReviewJson>, ProblemHttpResult>> Act(
        Viewer viewer, ReviewService reviews, string test, NewReviewActJson body, CancellationToken cancellation) =>
        body is { Kind: { } kind, RatingId: { } rating }
            ? (await reviews.Act(viewer, test, new(kind, body.Part, body.Concern, body.Note, rating), cancellation)).Answer(ReviewJson.Of)
            : Failure.BadRequest("kind and ratingId are needed.").ToProblem();

    private static async Task<Results<Ok<ReviewJson>, ProblemHttpResult>> Withdraw(
        Viewer viewer, ReviewService reviews, string test, long act, ReviewWithdrawalJson body, CancellationToken cancellation) =>
        (await reviews.Withdraw(viewer, test, act, body.Reason, cancellation)).Answer(ReviewJson.Of);
}
