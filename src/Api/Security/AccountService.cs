using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>A person with an account.</summary>
public sealed record AccountSummary(Guid Id, string Name, IReadOnlyList<Role> Roles, DateTimeOffset CreatedAt, bool Locked);

/// <summary>An account to make.</summary>
public sealed record NewAccount(string Name, string Password, IReadOnlyList<Role> Roles);

/// <summary>The people who may sign in. Administrators only.</summary>
public sealed class AccountService(ProgrammeDb db, UserManager<Account> users, AuditTrail audit, TimeProvider clock)
{
    public async Task<Outcome<IReadOnlyList<AccountSummary>>> List(Viewer viewer, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Administrator))
        {
            return Failure.Forbidden("see accounts");
        }

        var accounts = await db.Users.AsNoTracking().OrderBy(account => account.UserName).ToListAsync(cancellation);
        var roles = await db.UserRoles.Join(db.Roles, link => link.RoleId, role => role.Id, (link, role) => new { link.UserId, role.Name })
            .ToListAsync(cancellation);
        var byAccount = roles.ToLookup(link => link.UserId, link => link.Name!);
        return new(accounts.ConvertAll(account => Summary(account, byAccount[account.Id])), null);
    }

    public async Task<Outcome<AccountSummary>> Create(Viewer viewer, NewAccount wanted, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Administrator))
        {
            return Failure.Forbidden("make accounts");
        }

        if (string.IsNullOrWhiteSpace(wanted.Name) || string.IsNullOrEmpty(wanted.Password) || wanted.Roles is null or { Count: 0 })
        {
            return Failure.BadRequest("An account needs a name, a password and at least one role.");
        }

        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var account = new Account { UserName = wanted.Name, CreatedAt = clock.GetUtcNow() };
        var names = wanted.Roles.Distinct().Select(ViewerClaims.Name).ToArray();
        var result = await users.CreateAsync(account, wanted.Password);
        result = result.Succeeded ? await users.AddToRolesAsync(account, names) : result;
        if (!result.Succeeded)
        {
            return Failure.BadRequest(string.Join(" ", result.Errors.Select(error => error.Description)));
        }

        var summary = Summary(account, names);
        await audit.Append(db, viewer, new("create account", $"account/{account.UserName}", After: summary), cancellation);
        await transaction.CommitAsync(cancellation);
        return summary;
    }

    /// <summary>Replaces the account's roles; open sessions follow within a minute. The last administrator cannot be made something else.</summary>
    public async Task<Outcome<AccountSummary>> SetRoles(Viewer viewer, Guid id, IReadOnlyList<Role> roles, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Administrator))
        {
            return Failure.Forbidden("change roles");
        }

        if (await users.FindByIdAsync(id.ToString()) is not { } account)
        {
            return Failure.NotFound("account", id.ToString());
        }

        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var before = Summary(account, await users.GetRolesAsync(account));
        await users.RemoveFromRolesAsync(account, before.Roles.Select(ViewerClaims.Name));
        await users.AddToRolesAsync(account, roles.Distinct().Select(ViewerClaims.Name));
        if ((await users.GetUsersInRoleAsync(ViewerClaims.Name(Role.Administrator))).Count == 0)
        {
            return new Failure(FailureKind.Conflict, "Last administrator", "At least one account must stay administrator.");
        }

        await users.UpdateSecurityStampAsync(account);
        var after = before with { Roles = [.. roles.Distinct()] };
        await audit.Append(db, viewer, new("set roles", $"account/{account.UserName}", before, after), cancellation);
        await transaction.CommitAsync(cancellation);
        return after;
    }

    private AccountSummary Summary(Account account, IEnumerable<string> roles) => new(
        account.Id, account.UserName!, [.. roles.Select(ViewerClaims.Parse).OfType<Role>()], account.CreatedAt,
        account.LockoutEnd > clock.GetUtcNow());
}
