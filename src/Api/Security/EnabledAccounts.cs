using Microsoft.AspNetCore.Identity;
using Toepan.Api.Security.Tables;

namespace Toepan.Api.Security;

/// <summary>Keeps disabled accounts from signing in, by whatever way: Identity asks it before every one of them.</summary>
internal sealed class EnabledAccounts : IUserConfirmation<Account>
{
    public Task<bool> IsConfirmedAsync(UserManager<Account> manager, Account user) => Task.FromResult(user.DisabledAt is null);
}
