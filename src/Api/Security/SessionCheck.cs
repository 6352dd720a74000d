using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>
/// Every request with a session cookie is held against the account as it stands now: a disabled account and a session that was ended are
/// refused at once, and the roles are the present ones. Static files, which everybody may have, are not worth the query.
/// </summary>
internal static class SessionCheck
{
    private static readonly string StampClaim = new ClaimsIdentityOptions().SecurityStampClaimType;

    public static async Task Validate(CookieValidatePrincipalContext context)
    {
        if (context.HttpContext.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is not null)
        {
            return;
        }

        if (context.Principal is { } principal && await Present(context, principal) is { } account)
        {
            context.ReplacePrincipal(WithRoles(principal, account.Roles));
            return;
        }

        context.RejectPrincipal();
        await context.HttpContext.SignOutAsync(IdentityConstants.ApplicationScheme);
    }

    private static async Task<PresentAccount?> Present(CookieValidatePrincipalContext context, ClaimsPrincipal principal)
    {
        if (!Guid.TryParse(principal.FindFirstValue(ClaimTypes.NameIdentifier), out var id))
        {
            return null;
        }

        var contexts = context.HttpContext.RequestServices.GetRequiredService<IDbContextFactory<ProgrammeDb>>();
        await using var db = await contexts.CreateDbContextAsync(context.HttpContext.RequestAborted);
        var account = await PresentAccount.Find(db, id, context.HttpContext.RequestAborted);
        return account is { Disabled: false } && account.Stamp == principal.FindFirstValue(StampClaim) ? account : null;
    }

    private static ClaimsPrincipal WithRoles(ClaimsPrincipal principal, IEnumerable<Role> roles)
    {
        var identity = principal.Identities.First().Clone();
        foreach (var claim in identity.FindAll(ClaimTypes.Role).ToArray())
        {
            identity.RemoveClaim(claim);
        }

        identity.AddClaims(roles.Select(role => new Claim(ClaimTypes.Role, ViewerClaims.Name(role))));
        return new(identity);
    }
}
