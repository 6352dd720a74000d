using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Toepan.Api;

/// <summary>What every route of the contract declares beside its own answer.</summary>
internal static class ApiRoutes
{
    /// <summary>A group under /api/v1 with its tag and the refusals that any of its routes may give.</summary>
    public static RouteGroupBuilder MapApiGroup(this IEndpointRouteBuilder app, string path, string tag) => app.MapGroup($"/api/v1{path}")
        .WithTags(tag)
        .ProducesProblem(StatusCodes.Status400BadRequest)
        .ProducesProblem(StatusCodes.Status401Unauthorized)
        .ProducesProblem(StatusCodes.Status403Forbidden);

    /// <summary>Name, summary and description of a route.</summary>
    public static RouteHandlerBuilder Describe(this RouteHandlerBuilder route, string name, string summary, string description) =>
        route.WithName(name).WithSummary(summary).WithDescription(description);

    /// <summary>That a route answers 404 for something unknown.</summary>
    public static RouteHandlerBuilder OrNotFound(this RouteHandlerBuilder route) => route.ProducesProblem(StatusCodes.Status404NotFound);
}
