using Microsoft.AspNetCore.Identity;
using Toepan.Api.Security.Tables;

namespace Toepan.Api.Security;

/// <summary>Signs people in and out with the cookie.</summary>
public sealed class SignInService(SignInManager<Account> manager, IPasswordHasher<Account> hasher)
{
    private static readonly Account Nobody = new();
    private static string? nobodysHash;

    /// <summary>
    /// Signs the person in and sets the cookie. False for an unknown name, a wrong password and a locked account alike, in about the same
    /// time, so that an answer tells nothing about who has an account.
    /// </summary>
    public async Task<bool> SignIn(string? name, string? password)
    {
        if (string.IsNullOrEmpty(name) || string.IsNullOrEmpty(password))
        {
            return false;
        }

        if (await manager.UserManager.FindByNameAsync(name) is not { } account)
        {
            nobodysHash ??= hasher.HashPassword(Nobody, "nobody has this password");
            hasher.VerifyHashedPassword(Nobody, nobodysHash, password);
            return false;
        }

        return (await manager.PasswordSignInAsync(account, password, isPersistent: false, lockoutOnFailure: true)).Succeeded;
    }

    public Task SignOut() => manager.SignOutAsync();
}
