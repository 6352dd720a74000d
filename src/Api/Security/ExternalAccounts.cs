using System.Globalization;
using System.Security.Claims;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>An account and the subject it belongs to.</summary>
internal sealed record ExternalAccount(Account Account, UserLoginInfo Login);

/// <summary>
/// Accounts of people another provider vouches for, known by the provider's subject and never by name or address. A subject seen for the
/// first time gets an account without a role; where a role claim is configured, the roles follow what the provider says at every sign-in.
/// </summary>
internal sealed class ExternalAccounts(
    ProgrammeDb db, UserManager<Account> users, OpenIdConnectSettings settings, AccountStandingService standing, AuditTrail audit, TimeProvider clock)
{
    private const string SubjectClaim = "sub";

    internal const string ProviderName = "identity provider";

    /// <summary>The provider as the history names it.</summary>
    private static readonly Viewer Provider = new(ProviderName, new HashSet<Role> { Role.Administrator });

    /// <summary>The account of the person vouched for; null where no subject is named.</summary>
    public async Task<ExternalAccount?> Find(ClaimsPrincipal vouched, CancellationToken cancellation)
    {
        if (vouched.FindFirstValue(SubjectClaim) is not { Length: > 0 } subject)
        {
            return null;
        }

        var login = new UserLoginInfo(OpenIdConnectSignIn.Scheme, subject, settings.Title);
        var account = await users.FindByLoginAsync(login.LoginProvider, subject) ?? await Make(vouched, login, cancellation);
        await FollowRoles(vouched, account, cancellation);
        return new(account, login);
    }

    private async Task<Account> Make(ClaimsPrincipal vouched, UserLoginInfo login, CancellationToken cancellation)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var account = new Account { UserName = await FreeName(vouched, cancellation), CreatedAt = clock.GetUtcNow() };
        Demand(await users.CreateAsync(account));
        Demand(await users.AddLoginAsync(account, login));
        var after = AccountSummary.Of(account, [], clock.GetUtcNow());
        await audit.Append(db, Provider, new("create account", $"account/{account.UserName}", After: new { account = after, subject = login.ProviderKey }), cancellation);
        await transaction.CommitAsync(cancellation);
        return account;
    }

    private async Task FollowRoles(ClaimsPrincipal vouched, Account account, CancellationToken cancellation)
    {
        if (settings.RoleClaim is not { Length: > 0 } claim || account.DisabledAt is not null)
        {
            return;
        }

        Role[] said = [.. vouched.FindAll(claim).Select(one => RoleOf(one.Value)).OfType<Role>().Distinct().Order()];
        var present = (await users.GetRolesAsync(account)).Select(ViewerClaims.Parse).OfType<Role>().Order();
        if (!said.SequenceEqual(present))
        {
            // The last administrator stays one, whatever the provider says: the refusal changes nothing.
            await standing.SetRoles(Provider, account.Id, said, cancellation);
        }
    }

    private Role? RoleOf(string value) => settings.Roles.TryGetValue(value, out var role) ? ViewerClaims.Parse(role.ToLowerInvariant()) : null;

    /// <summary>The claimed name with what Identity does not take left out, numbered where somebody has it.</summary>
    private async Task<string> FreeName(ClaimsPrincipal vouched, CancellationToken cancellation)
    {
        var claimed = vouched.FindFirstValue(settings.NameClaim) ?? vouched.FindFirstValue("name") ?? "";
        var allowed = users.Options.User.AllowedUserNameCharacters;
        var wanted = string.Concat(claimed.Replace(' ', '.').Where(allowed.Contains).Take(100));
        wanted = wanted.Length > 0 ? wanted : "person";
        var name = wanted;
        for (var number = 2; await AccountNames.Refuse(db, name, cancellation) is not null; number++)
        {
            name = string.Create(CultureInfo.InvariantCulture, $"{wanted}-{number}");
        }

        return name;
    }

    private static void Demand(IdentityResult result)
    {
        if (!result.Succeeded)
        {
            throw new InvalidOperationException(string.Join(" ", result.Errors.Select(error => error.Description)));
        }
    }
}
