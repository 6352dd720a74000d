using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>How an attempt to sign in ended.</summary>
public enum SignInStep
{
    /// <summary>Unknown name, wrong password or code, locked or disabled account alike.</summary>
    Refused,

    /// <summary>The password was right; now the one-time code is asked for.</summary>
    CodeNeeded,

    /// <summary>The cookie is set.</summary>
    SignedIn,
}

/// <summary>Signs people in and out with the cookie.</summary>
public sealed class SignInService(
    SignInManager<Account> manager, IPasswordHasher<Account> hasher, IDbContextFactory<ProgrammeDb> contexts, TimeProvider clock)
{
    private static readonly Account Nobody = new();
    private static string? nobodysHash;

    /// <summary>
    /// Signs the person in and sets the cookie, or asks for the second factor where there is one. An unknown name, a wrong password, a locked
    /// and a disabled account are refused alike, in about the same time, so that an answer tells nothing about who has an account.
    /// </summary>
    public async Task<SignInStep> SignIn(string? name, string? password)
    {
        if (string.IsNullOrEmpty(name) || string.IsNullOrEmpty(password))
        {
            return SignInStep.Refused;
        }

        if (await manager.UserManager.FindByNameAsync(name) is not { } account)
        {
            HashForNobody(password);
            return SignInStep.Refused;
        }

        var result = await manager.PasswordSignInAsync(account, password, isPersistent: false, lockoutOnFailure: true);
        if (result.IsLockedOut || result.IsNotAllowed || account.PasswordHash is null)
        {
            HashForNobody(password);
        }

        return await Step(result, account);
    }

    /// <summary>The second step: a code of the app or a recovery code. Wrong ones count towards the lockout.</summary>
    public async Task<SignInStep> EnterCode(string? code)
    {
        if (await manager.GetTwoFactorAuthenticationUserAsync() is not { } account)
        {
            return SignInStep.Refused;
        }

        return await Step(await manager.TwoFactorSignInAsync(SecondFactorCodes.Provider, code ?? "", isPersistent: false, rememberClient: false), account);
    }

    /// <summary>Whether somebody has given a right password and still owes the code.</summary>
    public async Task<bool> AwaitsCode() => await manager.GetTwoFactorAuthenticationUserAsync() is not null;

    /// <summary>Signs in somebody another provider vouches for; the second factor is asked for all the same.</summary>
    internal async Task<SignInStep> SignInExternal(Account account, UserLoginInfo login) =>
        await Step(await manager.ExternalLoginSignInAsync(login.LoginProvider, login.ProviderKey, isPersistent: false, bypassTwoFactor: false), account);

    public Task SignOut() => manager.SignOutAsync();

    private async Task<SignInStep> Step(SignInResult result, Account account)
    {
        if (!result.Succeeded)
        {
            return result.RequiresTwoFactor ? SignInStep.CodeNeeded : SignInStep.Refused;
        }

        var now = clock.GetUtcNow();
        await using var db = await contexts.CreateDbContextAsync();
        await db.Users.Where(one => one.Id == account.Id).ExecuteUpdateAsync(update => update.SetProperty(one => one.LastSignInAt, now));
        return SignInStep.SignedIn;
    }

    private void HashForNobody(string password)
    {
        nobodysHash ??= hasher.HashPassword(Nobody, "nobody has this password");
        hasher.VerifyHashedPassword(Nobody, nobodysHash, password);
    }
}
