using Microsoft.AspNetCore.Identity;
using Toepan.Api.Security.Tables;

namespace Toepan.Api.Security;

/// <summary>
/// What a password must be: long rather than odd (NIST SP 800-63B, 5.1.1: length, no composition rules), and not the person's own name.
/// </summary>
public sealed class PasswordRules : IPasswordValidator<Account>
{
    public const int LeastLength = 12;
    public const int LeastDistinctCharacters = 5;
    public const int FailuresBeforeLockout = 5;
    public static readonly TimeSpan Lockout = TimeSpan.FromMinutes(15);

    /// <summary>The rules as a form says them.</summary>
    public const string Words = "At least 12 characters, 5 of them different, and without your name in it. A few unrelated words in a row are good. After five failures in a row an account rests for 15 minutes.";

    public Task<IdentityResult> ValidateAsync(UserManager<Account> manager, Account user, string? password) => Task.FromResult(
        password is not null && user.UserName is { Length: > 2 } name && password.Contains(name, StringComparison.OrdinalIgnoreCase)
            ? IdentityResult.Failed(new IdentityError { Code = "PasswordHoldsName", Description = "The password holds the name." })
            : IdentityResult.Success);
}
