using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>A person's own second factor: set up, confirmed by its first code, taken away.</summary>
public sealed class SecondFactorService(
    ProgrammeDb db, UserManager<Account> users, SecondFactorCodes codes, IDataProtectionProvider protection, AuditTrail audit, TimeProvider clock)
{
    private const string Issuer = "Toepan";

    public async Task<Outcome<SecondFactor>> Get(Viewer viewer, CancellationToken cancellation = default)
    {
        if (await Own(viewer) is not { } account)
        {
            return OwnAccount.Refusal;
        }

        var since = await db.Set<SecondFactorRow>().Where(row => row.AccountId == account.Id).Select(row => row.ConfirmedAt).SingleOrDefaultAsync(cancellation);
        var left = await db.Set<RecoveryCodeRow>().CountAsync(row => row.AccountId == account.Id && row.UsedAt == null, cancellation);
        return new SecondFactor(account.TwoFactorEnabled, since, left);
    }

    /// <summary>The key to enrol with: the one that waits, or a new one. Refused where a second factor is on.</summary>
    public async Task<Outcome<Enrolment>> Begin(Viewer viewer, CancellationToken cancellation = default)
    {
        if (await Own(viewer) is not { } account)
        {
            return OwnAccount.Refusal;
        }

        var row = await db.Set<SecondFactorRow>().SingleOrDefaultAsync(one => one.AccountId == account.Id, cancellation);
        if (row is { ConfirmedAt: not null })
        {
            return new Failure(FailureKind.Conflict, "Second factor is on", "Take the present one away first.");
        }

        var key = row is null ? RandomNumberGenerator.GetBytes(Totp.KeyBytes) : Protector(protection).Unprotect(Convert.FromBase64String(row.ProtectedKey));
        if (row is null)
        {
            db.Add(new SecondFactorRow { AccountId = account.Id, ProtectedKey = Convert.ToBase64String(Protector(protection).Protect(key)) });
            await db.SaveChangesAsync(cancellation);
        }

        return new Enrolment(Base32.Encode(key), Totp.Address(Issuer, account.UserName!, key));
    }

    /// <summary>Turns the second factor on with the app's first code; other sessions end. The recovery codes are shown this once.</summary>
    public async Task<Outcome<RecoveryCodes>> Confirm(Viewer viewer, string? code, CancellationToken cancellation = default)
    {
        if (await Own(viewer) is not { } account)
        {
            return OwnAccount.Refusal;
        }

        if (account.TwoFactorEnabled || !await codes.TakeTotp(account.Id, code, cancellation))
        {
            return WrongCode;
        }

        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var now = clock.GetUtcNow();
        await db.Set<SecondFactorRow>().Where(row => row.AccountId == account.Id)
            .ExecuteUpdateAsync(update => update.SetProperty(row => row.ConfirmedAt, now), cancellation);
        await users.SetTwoFactorEnabledAsync(account, true);
        var made = Renew(account.Id);
        await db.SaveChangesAsync(cancellation);
        await audit.Append(db, viewer, new("turn on second factor", $"account/{account.UserName}", new { secondFactor = false }, new { secondFactor = true }), cancellation);
        await transaction.CommitAsync(cancellation);
        return made;
    }

    /// <summary>Takes the second factor away with one more of its codes, or a recovery code; other sessions end.</summary>
    public async Task<Outcome<SecondFactor>> Remove(Viewer viewer, string? code, CancellationToken cancellation = default)
    {
        if (await Own(viewer) is not { } account)
        {
            return OwnAccount.Refusal;
        }

        if (!account.TwoFactorEnabled || await users.IsLockedOutAsync(account) || !await codes.Take(account, code, cancellation))
        {
            await users.AccessFailedAsync(account);
            return WrongCode;
        }

        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await Clear(db, users, account, cancellation);
        await audit.Append(db, viewer, new("turn off second factor", $"account/{account.UserName}", new { secondFactor = true }, new { secondFactor = false }), cancellation);
        await transaction.CommitAsync(cancellation);
        return new SecondFactor(false, null, 0);
    }

    /// <summary>Takes key and recovery codes away and ends the sessions, in the transaction that is open.</summary>
    internal static async Task Clear(ProgrammeDb db, UserManager<Account> users, Account account, CancellationToken cancellation)
    {
        await db.Set<RecoveryCodeRow>().Where(row => row.AccountId == account.Id).ExecuteDeleteAsync(cancellation);
        await db.Set<SecondFactorRow>().Where(row => row.AccountId == account.Id).ExecuteDeleteAsync(cancellation);
        await users.SetTwoFactorEnabledAsync(account, false);
    }

    internal static IDataProtector Protector(IDataProtectionProvider provider) => provider.CreateProtector("Toepan.SecondFactor.v1");

    private static Failure WrongCode => Failure.BadRequest("The code does not fit. A code counts once and for half a minute; check that the clock of your device is right.");

    private RecoveryCodes Renew(Guid account)
    {
        var made = Enumerable.Range(0, RecoveryCode.Count).Select(_ => RecoveryCode.New()).ToArray();
        db.AddRange(made.Select(code => new RecoveryCodeRow { AccountId = account, Hash = RecoveryCode.Hash(code) }));
        return new(made);
    }

    private Task<Account?> Own(Viewer viewer) => OwnAccount.Find(users, viewer);
}
