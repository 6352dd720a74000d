using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;

namespace Toepan.Api.Ratings;

/// <summary>Ratings and the schemes that make them.</summary>
internal static class RatingEndpoints
{
    public static void MapRatings(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Ratings");

        group.MapGet("/tests/{test}/rating", Rating).OrNotFound().Describe(
            "getRating", "Rating of a run",
            "Levels as words (high, moderate, low, very low protection), the driver of each with its margin, the rules that fired, and the explanation. Of a run not valid the levels are shown with valid false.");
        group.MapGet("/schemes", Schemes).Describe("listSchemes", "Rating schemes", "Editions of the rating rules that are known.");
    }

    private static async Task<Results<Ok<RatingJson>, ProblemHttpResult>> Rating(
        Viewer viewer, RatingService ratings, string test,
        [Description("Scheme key; left out: the scheme of the stored rating.")] string? scheme, CancellationToken cancellation) =>
        (await ratings.Get(viewer, test, scheme, cancellation)).Answer(RatingJson.Of);

    private static async Task<Results<Ok<IReadOnlyList<SchemeSummary>>, ProblemHttpResult>> Schemes(Viewer viewer, RatingService ratings) =>
        (await ratings.Schemes(viewer)).Answer();
}
