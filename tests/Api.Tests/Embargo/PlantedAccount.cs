using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Api.Tests.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Embargo;

/// <summary>Everything an account can keep secret.</summary>
internal static class PlantedAccount
{
    /// <summary>Gives the account a personal token and a second factor; their secrets.</summary>
    public static async Task<IReadOnlyList<string>> Furnish(ApiHost api, TestAccount account, string tokenName)
    {
        await using var scope = api.Services.CreateAsyncScope();
        await using var db = await scope.ServiceProvider.GetRequiredService<IDbContextFactory<ProgrammeDb>>().CreateDbContextAsync(TestContext.Current.CancellationToken);
        var id = await db.Users.Where(one => one.UserName == account.Name).Select(one => one.Id).SingleAsync(TestContext.Current.CancellationToken);
        var viewer = new Viewer(account.Name, new HashSet<Role> { Role.Engineer }) { Id = id };
        var token = await scope.ServiceProvider.GetRequiredService<PersonalTokenService>()
            .Issue(viewer, new(tokenName, [TokenScope.Read], DateTimeOffset.UtcNow.AddDays(30)), TestContext.Current.CancellationToken);
        var factors = scope.ServiceProvider.GetRequiredService<SecondFactorService>();
        var key = (await factors.Begin(viewer, TestContext.Current.CancellationToken)).Value!.Key;
        var code = Totp.Code(SecondFactorTests.Decode(key), Totp.StepAt(DateTimeOffset.UtcNow));
        var codes = await factors.Confirm(viewer, code, TestContext.Current.CancellationToken);
        return [token.Value!.Secret, key, .. codes.Value!.Codes];
    }
}
