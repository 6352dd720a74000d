using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>Takes one-time codes and recovery codes, each once (RFC 6238, section 5.2).</summary>
public sealed class SecondFactorCodes(IDbContextFactory<ProgrammeDb> contexts, IDataProtectionProvider protection, AuditTrail audit, TimeProvider clock)
    : IUserTwoFactorTokenProvider<Account>
{
    /// <summary>Name under which Identity knows this provider.</summary>
    public const string Provider = "code";

    /// <summary>True where it is a code of the app or an unused recovery code; it is used up.</summary>
    public async Task<bool> Take(Account account, string? code, CancellationToken cancellation = default) =>
        await TakeTotp(account.Id, code, cancellation) || await TakeRecovery(account, code, cancellation);

    /// <summary>True where it is a code of the account's key, later than every one taken before.</summary>
    public async Task<bool> TakeTotp(Guid account, string? code, CancellationToken cancellation = default)
    {
        var digits = string.Concat((code ?? "").Where(char.IsAsciiDigit));
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (digits.Length != Totp.Digits || await db.Set<SecondFactorRow>().AsNoTracking().SingleOrDefaultAsync(row => row.AccountId == account, cancellation) is not { } factor)
        {
            return false;
        }

        var key = SecondFactorService.Protector(protection).Unprotect(Convert.FromBase64String(factor.ProtectedKey));
        return Totp.Match(key, digits, clock.GetUtcNow()) is { } step
            && await db.Set<SecondFactorRow>().Where(row => row.AccountId == account && row.LastStep < step)
                .ExecuteUpdateAsync(update => update.SetProperty(row => row.LastStep, step), cancellation) == 1;
    }

    public Task<bool> CanGenerateTwoFactorTokenAsync(UserManager<Account> manager, Account user) => Task.FromResult(user.TwoFactorEnabled);

    /// <summary>Codes are made by the person's app, never here.</summary>
    public Task<string> GenerateAsync(string purpose, UserManager<Account> manager, Account user) => throw new NotSupportedException();

    public Task<bool> ValidateAsync(string purpose, string token, UserManager<Account> manager, Account user) => Take(user, token);

    private async Task<bool> TakeRecovery(Account account, string? code, CancellationToken cancellation)
    {
        var (hash, now) = (RecoveryCode.Hash(code ?? ""), clock.GetUtcNow());
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var used = await db.Set<RecoveryCodeRow>().Where(row => row.AccountId == account.Id && row.Hash == hash && row.UsedAt == null)
            .ExecuteUpdateAsync(update => update.SetProperty(row => row.UsedAt, now), cancellation) == 1;
        if (used)
        {
            var person = new Viewer(account.UserName!, new HashSet<Role>()) { Id = account.Id };
            await audit.Append(db, person, new("use recovery code", $"account/{account.UserName}"), cancellation);
            await transaction.CommitAsync(cancellation);
        }

        return used;
    }
}
