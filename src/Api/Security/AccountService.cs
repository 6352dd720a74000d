using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

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
        return Outcome.List<AccountSummary>(accounts.ConvertAll(account => AccountSummary.Of(account, byAccount[account.Id], clock.GetUtcNow())));
    }

    public async Task<Outcome<AccountSummary>> Get(Viewer viewer, Guid id, CancellationToken cancellation = default)
    {
        var all = await List(viewer, cancellation);
        return all.Value is null
            ? all.Failure!
            : all.Value.FirstOrDefault(account => account.Id == id) is { } found ? found : Failure.NotFound("account", id.ToString());
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
        var made = await Make(wanted, cancellation);
        if (made.Value is { } summary)
        {
            await audit.Append(db, viewer, new("create account", $"account/{summary.Name}", After: summary), cancellation);
            await transaction.CommitAsync(cancellation);
        }

        return made;
    }

    /// <summary>Makes the account in the transaction that is open on the scope's context; writes no audit entry.</summary>
    internal async Task<Outcome<AccountSummary>> Make(NewAccount wanted, CancellationToken cancellation)
    {
        if (await AccountNames.Refuse(db, wanted.Name, cancellation) is { } refusal)
        {
            return refusal;
        }

        var account = new Account { UserName = wanted.Name, CreatedAt = clock.GetUtcNow() };
        var names = wanted.Roles.Distinct().Select(ViewerClaims.Name).ToArray();
        var result = await users.CreateAsync(account, wanted.Password);
        result = result.Succeeded ? await users.AddToRolesAsync(account, names) : result;
        return result.Succeeded ? AccountSummary.Of(account, names, clock.GetUtcNow()) : Refused(result);
    }

    internal static Failure Refused(IdentityResult result) => Failure.BadRequest(string.Join(" ", result.Errors.Select(error => error.Description)));
}
