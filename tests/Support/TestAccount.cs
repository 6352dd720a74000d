using System.Globalization;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Toepan.Api.Security;
using Toepan.Api.Security.Tables;

namespace Toepan.Support;

/// <summary>A person with an account, for tests.</summary>
public sealed record TestAccount(string Name, string Password)
{
    private static int made;

    public static async Task<TestAccount> Create(IServiceProvider services, params Role[] roles)
    {
        var account = new TestAccount(
            string.Create(CultureInfo.InvariantCulture, $"person{Interlocked.Increment(ref made)}"), "plum-coloured folded plate");
        await using var scope = services.CreateAsyncScope();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<Account>>();
        var row = new Account { UserName = account.Name, CreatedAt = DateTimeOffset.UtcNow };
        Demand(await users.CreateAsync(row, account.Password));
        Demand(await users.AddToRolesAsync(row, roles.Select(ViewerClaims.Name)));
        return account;
    }

    private static void Demand(IdentityResult result)
    {
        if (!result.Succeeded)
        {
            throw new InvalidOperationException(string.Join(" ", result.Errors.Select(error => error.Description)));
        }
    }
}
