using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>Bearer tokens of machines, and a view of people's. Administrators only.</summary>
public sealed class TokenService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider clock)
{
    public async Task<Outcome<IReadOnlyList<TokenSummary>>> List(Viewer viewer, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Administrator))
        {
            return Failure.Forbidden("see tokens");
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var rows = await db.Set<TokenRow>().AsNoTracking().OrderBy(row => row.Name).ToListAsync(cancellation);
        return Outcome.List<TokenSummary>(rows.ConvertAll(TokenSummary.Of));
    }

    public async Task<Outcome<IssuedToken>> Issue(Viewer viewer, NewToken token, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Administrator))
        {
            return Failure.Forbidden("make tokens");
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (TokenRules.Refuse(token, clock.GetUtcNow()) is { } refusal)
        {
            return refusal;
        }

        if (await AccountNames.Refuse(db, token.Name, cancellation) is { } taken)
        {
            return taken;
        }

        var secret = TokenSecret.New();
        var scopes = token.Scopes?.Distinct().ToArray() ?? [];
        var row = new TokenRow
        {
            Name = token.Name, Hash = TokenSecret.Hash(secret), Scopes = scopes,
            Roles = [.. (token.Roles ?? []).Concat(TokenScopes.Roles(scopes)).Distinct()],
            CreatedAt = clock.GetUtcNow(), CreatedBy = viewer.Name, ExpiresAt = token.ExpiresAt,
        };
        if (token.Roles is { Count: > 0 })
        {
            row.Scopes = [];
        }

        db.Add(row);
        await Keep(db, viewer, new("issue token", $"token/{row.Name}", After: TokenSummary.Of(row)), cancellation);
        return new IssuedToken(TokenSummary.Of(row), secret);
    }

    /// <summary>Refuses the token, a machine's or a person's, from now on; it stays in the list.</summary>
    public async Task<Outcome<TokenSummary>> Revoke(Viewer viewer, Guid id, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Administrator))
        {
            return Failure.Forbidden("revoke tokens");
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.FindAsync<TokenRow>([id], cancellation) is { } row
            ? await Revoke(db, viewer, row, cancellation)
            : Failure.NotFound("token", id.ToString());
    }

    internal async Task<TokenSummary> Revoke(ProgrammeDb db, Viewer viewer, TokenRow row, CancellationToken cancellation)
    {
        var before = TokenSummary.Of(row);
        row.RevokedAt ??= clock.GetUtcNow();
        var entity = row.OwnerId is null ? $"token/{row.Name}" : $"token/{row.CreatedBy}/{row.Name}";
        await Keep(db, viewer, new("revoke token", entity, before, TokenSummary.Of(row)), cancellation);
        return TokenSummary.Of(row);
    }

    internal async Task Keep(ProgrammeDb db, Viewer viewer, AuditNote note, CancellationToken cancellation)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await db.SaveChangesAsync(cancellation);
        await audit.Append(db, viewer, note, cancellation);
        await transaction.CommitAsync(cancellation);
    }
}
