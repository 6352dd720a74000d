using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;

namespace Toepan.Api.Ratings;

/// <summary>Ratings of runs.</summary>
internal static class RatingEndpoints
{
    public static void MapRatings(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Ratings");

        group.MapGet("/tests/{test}/rating", Rating).OrNotFound().Describe(
            "getRating", "Rating of a run",
            "Levels as words (high, moderate, low, very low protection), the driver of each with its margin, every rule and whether it fired, the explanation, the arithmetic, and what it was made from by hash. With scheme: by that edition instead, from stored measures. Of a run not valid the levels are shown with valid false.");
    }

    private static async Task<Results<Ok<RatingJson>, ProblemHttpResult>> Rating(
        Viewer viewer, RatingService ratings, string test,
        [Description("Scheme key; left out: the scheme of the stored rating.")] string? scheme, CancellationToken cancellation) =>
        (await ratings.Explained(viewer, test, scheme, cancellation)).Answer(RatingJson.Of);
}
