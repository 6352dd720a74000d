using System.Security.Claims;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>Signs machines, and people's scripts, in by <c>Authorization: Bearer</c>. Unknown, expired and revoked tokens are answered alike.</summary>
internal sealed class TokenHandler(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, IDbContextFactory<ProgrammeDb> contexts)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    private const string Marker = "Bearer ";
    private static readonly TimeSpan UseResolution = TimeSpan.FromMinutes(1);

    /// <summary>Whether the request carries a bearer token, good or bad.</summary>
    public static bool Carries(Microsoft.AspNetCore.Http.HttpRequest request) =>
        request.Headers.Authorization.ToString().StartsWith(Marker, StringComparison.OrdinalIgnoreCase);

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (!Carries(Request))
        {
            return AuthenticateResult.NoResult();
        }

        var hash = TokenSecret.Hash(Request.Headers.Authorization.ToString()[Marker.Length..].Trim());
        var now = TimeProvider.GetUtcNow();
        await using var db = await contexts.CreateDbContextAsync(Context.RequestAborted);
        var row = await db.Set<TokenRow>().AsNoTracking().SingleOrDefaultAsync(token => token.Hash == hash, Context.RequestAborted);
        if (row is null || row.RevokedAt is not null || row.ExpiresAt <= now)
        {
            return AuthenticateResult.Fail("The token is unknown, expired or revoked.");
        }

        if (await Speaker(db, row) is not { } speaker)
        {
            return AuthenticateResult.Fail("The owner of the token is disabled.");
        }

        await NoteUse(db, row, now);
        return AuthenticateResult.Success(new(speaker, Scheme.Name));
    }

    /// <summary>The machine itself, or the person whose token it is with no more than the person's present roles; null where that person is disabled.</summary>
    private async Task<ClaimsPrincipal?> Speaker(ProgrammeDb db, TokenRow row)
    {
        var readOnly = TokenScopes.ReadsOnly(row.Scopes);
        if (row.OwnerId is not { } owner)
        {
            return ViewerClaims.Write(row.Id, row.Name, row.Roles, Scheme.Name, readOnly);
        }

        return await PresentAccount.Find(db, owner, Context.RequestAborted) is { Disabled: false } account
            ? ViewerClaims.Write(owner, account.Name, TokenScopes.Roles(row.Scopes, account.Roles), Scheme.Name, readOnly)
            : null;
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers.WWWAuthenticate = "Bearer";
        return ProblemAnswer.Unauthorized(Context);
    }

    protected override Task HandleForbiddenAsync(AuthenticationProperties properties) => ProblemAnswer.Forbidden(Context);

    private async Task NoteUse(ProgrammeDb db, TokenRow row, DateTimeOffset now)
    {
        if (row.LastUsedAt is { } last && now - last < UseResolution)
        {
            return;
        }

        await db.Set<TokenRow>().Where(token => token.Id == row.Id)
            .ExecuteUpdateAsync(update => update.SetProperty(token => token.LastUsedAt, now), Context.RequestAborted);
    }
}
