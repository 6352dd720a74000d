using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Builder;

namespace Toepan.Api.Security;

/// <summary>Who may call a route. Without a word of its own a route needs somebody signed in who has at least one role.</summary>
public static class Policies
{
    private static readonly string[] AnyRole = [.. Enum.GetValues<Role>().Select(ViewerClaims.Name)];

    public static AuthorizationPolicy SignedInWithRole { get; } = new AuthorizationPolicyBuilder().RequireAuthenticatedUser().RequireRole(AnyRole).Build();

    /// <summary>Only viewers with one of these roles.</summary>
    public static TBuilder RequireRoles<TBuilder>(this TBuilder builder, params Role[] any)
        where TBuilder : IEndpointConventionBuilder =>
        builder.RequireAuthorization(policy => policy.RequireAuthenticatedUser().RequireRole(any.Select(ViewerClaims.Name)));
}
