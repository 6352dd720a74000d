using Microsoft.AspNetCore.Routing;

namespace Toepan.Api;

/// <summary>The HTTP contract, version 1.</summary>
public static class ApiEndpoints
{
    public static IEndpointRouteBuilder MapApi(this IEndpointRouteBuilder app) => app;
}
