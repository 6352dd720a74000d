using Toepan.Api.Security.Tables;

namespace Toepan.Api.Security;

/// <summary>A machine's token to make.</summary>
/// <param name="Name">Name the history will show.</param>
/// <param name="Roles">What it may do, as roles; at least one unless scopes are given.</param>
/// <param name="ExpiresAt">Refused from this time on; null = never expires.</param>
/// <param name="Scopes">What it may do, as scopes, in place of roles.</param>
public sealed record NewToken(
    string Name, IReadOnlyList<Role>? Roles = null, DateTimeOffset? ExpiresAt = null, IReadOnlyList<TokenScope>? Scopes = null);

/// <summary>A person's own token to make.</summary>
/// <param name="Name">What it is for, in the person's words.</param>
/// <param name="Scopes">What it may do; at least one, none beyond the person's roles.</param>
/// <param name="ExpiresAt">Refused from this time on; at most a year ahead.</param>
public sealed record NewPersonalToken(string Name, IReadOnlyList<TokenScope> Scopes, DateTimeOffset? ExpiresAt);

/// <summary>A token as lists show it: everything but its secret.</summary>
/// <param name="Owner">The person whose token it is; null for a machine's.</param>
public sealed record TokenSummary(
    Guid Id, string Name, IReadOnlyList<Role> Roles, DateTimeOffset CreatedAt, string CreatedBy, DateTimeOffset? ExpiresAt,
    DateTimeOffset? RevokedAt, DateTimeOffset? LastUsedAt, IReadOnlyList<TokenScope> Scopes, string? Owner)
{
    internal static TokenSummary Of(TokenRow row) => new(
        row.Id, row.Name, row.Roles, row.CreatedAt, row.CreatedBy, row.ExpiresAt, row.RevokedAt, row.LastUsedAt, row.Scopes,
        row.OwnerId is null ? null : row.CreatedBy);

    /// <summary>usable, expired or revoked.</summary>
    public string StateAt(DateTimeOffset now) => RevokedAt is not null ? "revoked" : ExpiresAt <= now ? "expired" : "usable";
}

/// <summary>A token just made, with the secret that is shown this once.</summary>
public sealed record IssuedToken(TokenSummary Token, string Secret);
