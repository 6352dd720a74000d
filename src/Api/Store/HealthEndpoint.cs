using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Toepan.Api.Store;

/// <summary>What a healthy service answers.</summary>
/// <param name="Status">Always <c>ok</c>.</param>
public sealed record Health(string Status);

/// <summary>Whether the service serves, for whoever keeps it running.</summary>
public static class HealthEndpoint
{
    public static void MapHealth(this IEndpointRouteBuilder app) => app.MapGet("/health", Get)
        .AllowAnonymous()
        .WithName("GetHealth")
        .WithSummary("200 when the database answers, else 503.")
        .WithTags("Service")
        .ProducesProblem(StatusCodes.Status503ServiceUnavailable);

    private static async Task<Results<Ok<Health>, ProblemHttpResult>> Get(StoreHealth store, CancellationToken cancellation) =>
        await store.Answers(cancellation)
            ? TypedResults.Ok(new Health("ok"))
            : TypedResults.Problem(
                statusCode: StatusCodes.Status503ServiceUnavailable, title: "The database does not answer", detail: "Try again in a moment.");
}
