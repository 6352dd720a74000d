using Microsoft.AspNetCore.Identity;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>A person's own account: password and sessions.</summary>
public sealed class OwnAccountService(ProgrammeDb db, UserManager<Account> users, SignInManager<Account> manager, AuditTrail audit)
{
    /// <summary>Whether there is a password, and not another provider's sign-in alone.</summary>
    public async Task<bool> HasPassword(Viewer viewer) => await OwnAccount.Find(users, viewer) is { PasswordHash: not null };

    /// <summary>Changes the password and ends every other session. A wrong present one counts towards the lockout.</summary>
    public async Task<Outcome<Viewer>> ChangePassword(Viewer viewer, string? present, string? wanted, CancellationToken cancellation = default)
    {
        if (await OwnAccount.Find(users, viewer) is not { } account)
        {
            return OwnAccount.Refusal;
        }

        if (!(await manager.CheckPasswordSignInAsync(account, present ?? "", lockoutOnFailure: true)).Succeeded)
        {
            return Failure.BadRequest("The present password is not right.");
        }

        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var result = await users.ChangePasswordAsync(account, present!, wanted ?? "");
        if (!result.Succeeded)
        {
            return AccountService.Refused(result);
        }

        await audit.Append(db, viewer, new("change password", $"account/{account.UserName}"), cancellation);
        await transaction.CommitAsync(cancellation);
        await manager.RefreshSignInAsync(account);
        return viewer;
    }

    /// <summary>Ends every session of the person, this one too.</summary>
    public async Task<Outcome<Viewer>> EndSessions(Viewer viewer, CancellationToken cancellation = default)
    {
        if (await OwnAccount.Find(users, viewer) is not { } account)
        {
            return OwnAccount.Refusal;
        }

        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await users.UpdateSecurityStampAsync(account);
        await audit.Append(db, viewer, new("end sessions", $"account/{account.UserName}"), cancellation);
        await transaction.CommitAsync(cancellation);
        await manager.SignOutAsync();
        return viewer;
    }

    /// <summary>Keeps this session where a change of the account has ended the others.</summary>
    public async Task KeepSession(Viewer viewer)
    {
        if (await OwnAccount.Find(users, viewer) is { } account)
        {
            await manager.RefreshSignInAsync(account);
        }
    }
}
