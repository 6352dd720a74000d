using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>A token to make.</summary>
/// <param name="Name">Name the history will show.</param>
/// <param name="Roles">What it may do; at least one.</param>
/// <param name="ExpiresAt">Refused from this time on; null = never expires.</param>
public sealed record NewToken(string Name, IReadOnlyList<Role> Roles, DateTimeOffset? ExpiresAt = null);

/// <summary>A token as lists show it: everything but its secret.</summary>
public sealed record TokenSummary(
    Guid Id, string Name, IReadOnlyList<Role> Roles, DateTimeOffset CreatedAt, string CreatedBy, DateTimeOffset? ExpiresAt,
    DateTimeOffset? RevokedAt, DateTimeOffset? LastUsedAt);

/// <summary>A token just made, with the secret that is shown this once.</summary>
public sealed record IssuedToken(TokenSummary Token, string Secret);

/// <summary>Bearer tokens of machines. Administrators only.</summary>
public sealed class TokenService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider clock)
{
    private const int LongestName = 100;

    public async Task<Outcome<IReadOnlyList<TokenSummary>>> List(Viewer viewer, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Administrator))
        {
            return Failure.Forbidden("see tokens");
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var rows = await db.Set<TokenRow>().AsNoTracking().OrderBy(row => row.Name).ToListAsync(cancellation);
        return new(rows.ConvertAll(Summary), null);
    }

    public async Task<Outcome<IssuedToken>> Issue(Viewer viewer, NewToken token, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Administrator))
        {
            return Failure.Forbidden("make tokens");
        }

        if (Refuse(token) is { } refusal)
        {
            return refusal;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.Set<TokenRow>().AnyAsync(row => row.Name == token.Name, cancellation))
        {
            return new Failure(FailureKind.Conflict, "Name taken", $"There is a token named '{token.Name}' already.");
        }

        var secret = TokenSecret.New();
        var row = new TokenRow
        {
            Name = token.Name, Hash = TokenSecret.Hash(secret), Roles = [.. token.Roles.Distinct()],
            CreatedAt = clock.GetUtcNow(), CreatedBy = viewer.Name, ExpiresAt = token.ExpiresAt,
        };
        db.Add(row);
        await Keep(db, viewer, new("issue token", $"token/{row.Name}", After: Summary(row)), cancellation);
        return new IssuedToken(Summary(row), secret);
    }

    /// <summary>Refuses the token from now on; it stays in the list.</summary>
    public async Task<Outcome<TokenSummary>> Revoke(Viewer viewer, Guid id, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Administrator))
        {
            return Failure.Forbidden("revoke tokens");
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.FindAsync<TokenRow>([id], cancellation) is not { } row)
        {
            return Failure.NotFound("token", id.ToString());
        }

        var before = Summary(row);
        row.RevokedAt ??= clock.GetUtcNow();
        await Keep(db, viewer, new("revoke token", $"token/{row.Name}", before, Summary(row)), cancellation);
        return Summary(row);
    }

    private Failure? Refuse(NewToken token) => token switch
    {
        { Name: null or { Length: 0 or > LongestName } } => Failure.BadRequest($"A token needs a name of 1 to {LongestName} characters."),
        { Roles: null or { Count: 0 } } => Failure.BadRequest("A token needs at least one role."),
        _ when token.ExpiresAt <= clock.GetUtcNow() => Failure.BadRequest("expiresAt is past."),
        _ => null,
    };

    private async Task Keep(ProgrammeDb db, Viewer viewer, AuditNote note, CancellationToken cancellation)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await db.SaveChangesAsync(cancellation);
        await audit.Append(db, viewer, note, cancellation);
        await transaction.CommitAsync(cancellation);
    }

    private static TokenSummary Summary(TokenRow row) =>
        new(row.Id, row.Name, row.Roles, row.CreatedAt, row.CreatedBy, row.ExpiresAt, row.RevokedAt, row.LastUsedAt);
}
