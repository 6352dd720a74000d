using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>A person's own bearer tokens: they act as the person, within their scopes and the roles the person has at the time.</summary>
public sealed class PersonalTokenService(IDbContextFactory<ProgrammeDb> contexts, TokenService tokens, TimeProvider clock)
{
    public async Task<Outcome<IReadOnlyList<TokenSummary>>> List(Viewer viewer, CancellationToken cancellation = default)
    {
        if (viewer is not { ByToken: false, Id: { } owner })
        {
            return OwnAccount.Refusal;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var rows = await db.Set<TokenRow>().AsNoTracking().Where(row => row.OwnerId == owner).OrderBy(row => row.Name).ToListAsync(cancellation);
        return Outcome.List<TokenSummary>(rows.ConvertAll(TokenSummary.Of));
    }

    public async Task<Outcome<IssuedToken>> Issue(Viewer viewer, NewPersonalToken token, CancellationToken cancellation = default)
    {
        if (viewer is not { ByToken: false, Id: { } owner })
        {
            return OwnAccount.Refusal;
        }

        var now = clock.GetUtcNow();
        if (TokenRules.Refuse(token, viewer.Roles, now) is { } refusal)
        {
            return refusal;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.Set<TokenRow>().AnyAsync(row => row.OwnerId == owner && row.Name == token.Name, cancellation))
        {
            return new Failure(FailureKind.Conflict, "Name taken", $"You have a token named '{token.Name}' already.");
        }

        var secret = TokenSecret.New();
        var row = new TokenRow
        {
            Name = token.Name, Hash = TokenSecret.Hash(secret), Scopes = [.. token.Scopes.Distinct()], OwnerId = owner,
            CreatedAt = now, CreatedBy = viewer.Name, ExpiresAt = token.ExpiresAt,
        };
        db.Add(row);
        await tokens.Keep(db, viewer, new("issue token", $"token/{viewer.Name}/{row.Name}", After: TokenSummary.Of(row)), cancellation);
        return new IssuedToken(TokenSummary.Of(row), secret);
    }

    /// <summary>Refuses one's own token from now on.</summary>
    public async Task<Outcome<TokenSummary>> Revoke(Viewer viewer, Guid id, CancellationToken cancellation = default)
    {
        if (viewer is not { ByToken: false, Id: { } owner })
        {
            return OwnAccount.Refusal;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Set<TokenRow>().SingleOrDefaultAsync(row => row.Id == id && row.OwnerId == owner, cancellation) is { } row
            ? await tokens.Revoke(db, viewer, row, cancellation)
            : Failure.NotFound("token", id.ToString());
    }
}
