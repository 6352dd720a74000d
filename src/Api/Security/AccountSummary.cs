using Toepan.Api.Security.Tables;

namespace Toepan.Api.Security;

/// <summary>A person with an account.</summary>
/// <param name="Locked">Resting after wrong passwords.</param>
/// <param name="Disabled">Refused until enabled again.</param>
/// <param name="SecondFactor">Whether signing in takes a one-time code.</param>
public sealed record AccountSummary(
    Guid Id, string Name, IReadOnlyList<Role> Roles, DateTimeOffset CreatedAt, bool Locked, bool Disabled, bool SecondFactor, DateTimeOffset? LastSignInAt)
{
    internal static AccountSummary Of(Account account, IEnumerable<string> roles, DateTimeOffset now) => new(
        account.Id, account.UserName!, [.. roles.Select(ViewerClaims.Parse).OfType<Role>().Order()], account.CreatedAt,
        account.LockoutEnd > now, account.DisabledAt is not null, account.TwoFactorEnabled, account.LastSignInAt);
}

/// <summary>An account to make.</summary>
public sealed record NewAccount(string Name, string Password, IReadOnlyList<Role> Roles);
