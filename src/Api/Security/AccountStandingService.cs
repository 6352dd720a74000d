using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>What an account may do and whether it may sign in. Administrators only; one enabled administrator always stays.</summary>
public sealed class AccountStandingService(ProgrammeDb db, UserManager<Account> users, AuditTrail audit, TimeProvider clock)
{
    private const long LockKey = 0x70656F706C65;

    /// <summary>Replaces the account's roles; open sessions and personal tokens follow with their next request.</summary>
    public Task<Outcome<AccountSummary>> SetRoles(Viewer viewer, Guid id, IReadOnlyList<Role> roles, CancellationToken cancellation = default) =>
        Change(viewer, id, "set roles", account => Replace(account, roles), cancellation);

    /// <summary>Refuses the person from now on: sessions end, personal tokens are revoked, open invitations made by them are withdrawn.</summary>
    public Task<Outcome<AccountSummary>> Disable(Viewer viewer, Guid id, CancellationToken cancellation = default) =>
        Change(viewer, id, "disable account", account => Refuse(viewer, account, cancellation), cancellation);

    /// <summary>Lets the person sign in again, also out of a lockout; revoked tokens stay revoked.</summary>
    public Task<Outcome<AccountSummary>> Enable(Viewer viewer, Guid id, CancellationToken cancellation = default) =>
        Change(viewer, id, "enable account", Admit, cancellation);

    /// <summary>Ends every session of the person.</summary>
    public Task<Outcome<AccountSummary>> EndSessions(Viewer viewer, Guid id, CancellationToken cancellation = default) =>
        Change(viewer, id, "end sessions", account => users.UpdateSecurityStampAsync(account), cancellation);

    /// <summary>Takes the second factor away, for somebody who lost it; sessions end.</summary>
    public Task<Outcome<AccountSummary>> ResetSecondFactor(Viewer viewer, Guid id, CancellationToken cancellation = default) =>
        Change(viewer, id, "reset second factor", account => SecondFactorService.Clear(db, users, account, cancellation), cancellation);

    private async Task<Outcome<AccountSummary>> Change(
        Viewer viewer, Guid id, string action, Func<Account, Task> change, CancellationToken cancellation)
    {
        if (!viewer.Is(Role.Administrator))
        {
            return Failure.Forbidden("change accounts");
        }

        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({LockKey})", cancellation);
        if (await users.FindByIdAsync(id.ToString()) is not { } account)
        {
            return Failure.NotFound("account", id.ToString());
        }

        var before = await Summary(account);
        await change(account);
        if (!await AnyAdministrator(cancellation))
        {
            return new Failure(FailureKind.Conflict, "Last administrator", "At least one account that may sign in must stay administrator.");
        }

        var after = await Summary(account);
        await audit.Append(db, viewer, new(action, $"account/{account.UserName}", before, after), cancellation);
        await transaction.CommitAsync(cancellation);
        return after;
    }

    private async Task Replace(Account account, IReadOnlyList<Role> roles)
    {
        await users.RemoveFromRolesAsync(account, await users.GetRolesAsync(account));
        await users.AddToRolesAsync(account, roles.Distinct().Select(ViewerClaims.Name));
    }

    private async Task Refuse(Viewer viewer, Account account, CancellationToken cancellation)
    {
        var now = clock.GetUtcNow();
        account.DisabledAt ??= now;
        account.DisabledBy ??= viewer.Name;
        await users.UpdateSecurityStampAsync(account);
        await db.Set<TokenRow>().Where(row => row.OwnerId == account.Id && row.RevokedAt == null)
            .ExecuteUpdateAsync(update => update.SetProperty(row => row.RevokedAt, now), cancellation);
        await db.Set<InvitationRow>().Where(row => row.CreatedBy == account.UserName && row.UsedAt == null && row.WithdrawnAt == null)
            .ExecuteUpdateAsync(update => update.SetProperty(row => row.WithdrawnAt, now), cancellation);
    }

    private async Task Admit(Account account)
    {
        (account.DisabledAt, account.DisabledBy) = (null, null);
        await users.SetLockoutEndDateAsync(account, null);
        await users.ResetAccessFailedCountAsync(account);
    }

    private Task<bool> AnyAdministrator(CancellationToken cancellation)
    {
        var administrator = ViewerClaims.Name(Role.Administrator);
        return db.UserRoles.Join(db.Roles.Where(role => role.Name == administrator), link => link.RoleId, role => role.Id, (link, _) => link.UserId)
            .Join(db.Users.Where(account => account.DisabledAt == null), id => id, account => account.Id, (_, account) => account)
            .AnyAsync(cancellation);
    }

    private async Task<AccountSummary> Summary(Account account) => AccountSummary.Of(account, await users.GetRolesAsync(account), clock.GetUtcNow());
}
