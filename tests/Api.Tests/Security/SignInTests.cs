using System.Net;
using System.Net.Http.Json;
using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Security;

/// <summary>People sign in with a cookie; what they change needs the antiforgery token; wrong passwords lock.</summary>
public sealed class SignInTests(PostgresFixture postgres)
{
    private static readonly object NewClass = new { key = "estate-car", title = "Estate cars" };

    [Fact]
    public async Task SignIn_Cookie_IsHiddenFromScriptsAndOtherSites()
    {
        await using var api = await ApiHost.Start(postgres);
        var account = await TestAccount.Create(api.Services, Role.Analyst);
        using var browser = new Browser(api.Anonymous());

        using var answer = await browser.TrySignIn(account.Name, account.Password);

        var cookie = answer.Headers.GetValues("Set-Cookie").Single(one => one.StartsWith("toepan.session=", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=lax", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("expires=", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(HttpStatusCode.OK, (await browser.Client.GetAsync("/api/v1/classes", TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task SignIn_FiveWrongPasswords_LockTheAccount()
    {
        await using var api = await ApiHost.Start(postgres);
        var account = await TestAccount.Create(api.Services, Role.Analyst);
        using var browser = new Browser(api.Anonymous());

        for (var attempt = 0; attempt < 5; attempt++)
        {
            using var refused = await browser.TrySignIn(account.Name, "not this one at all");
            Assert.Equal(HttpStatusCode.OK, refused.StatusCode);
        }

        using var right = await browser.TrySignIn(account.Name, account.Password);
        Assert.Equal(HttpStatusCode.OK, right.StatusCode);
        Assert.False(right.Headers.Contains("Set-Cookie") && right.Headers.GetValues("Set-Cookie").Any(one => one.StartsWith("toepan.session=", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task SignIn_UnknownName_AnswersLikeAWrongPassword()
    {
        await using var api = await ApiHost.Start(postgres);
        var account = await TestAccount.Create(api.Services, Role.Analyst);
        using var browser = new Browser(api.Anonymous());

        using var unknown = await browser.TrySignIn("nobody", "not this one at all");
        using var wrong = await browser.TrySignIn(account.Name, "not this one at all");

        Assert.Equal(unknown.StatusCode, wrong.StatusCode);
    }

    [Fact]
    public async Task SignIn_WithoutAntiforgeryToken_IsRefused()
    {
        await using var api = await ApiHost.Start(postgres);
        var account = await TestAccount.Create(api.Services, Role.Analyst);
        using var client = api.Anonymous();
        using var form = new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["_handler"] = "sign-in", ["Form.Name"] = account.Name, ["Form.Password"] = account.Password,
        });

        using var answer = await client.PostAsync("/sign-in", form, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task Api_CookieWithoutAntiforgeryToken_ChangesNothing()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Person(Role.Manager);

        using var refused = await manager.Client.PostAsJsonAsync("/api/v1/classes", NewClass, TestContext.Current.CancellationToken);
        var classes = await manager.Client.GetStringAsync("/api/v1/classes", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Equal("application/problem+json", refused.Content.Headers.ContentType?.MediaType);
        Assert.DoesNotContain("estate-car", classes, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Api_CookieWithSomebodyElsesAntiforgeryToken_IsRefused()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Person(Role.Manager);
        using var other = await api.Person(Role.Manager);

        using var answer = await Post(manager, await other.AntiforgeryToken("/preferences"));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task Api_CookieWithAntiforgeryToken_IsTaken()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Person(Role.Manager);

        using var answer = await Post(manager, await manager.AntiforgeryToken("/preferences"));

        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Api_BearerWithoutAntiforgeryToken_IsTaken()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);

        using var answer = await manager.PostAsJsonAsync("/api/v1/classes", NewClass, TestContext.Current.CancellationToken);

        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Accounts_LastAdministrator_CannotBecomeSomethingElse()
    {
        await using var api = await ApiHost.Start(postgres);
        using var administrator = await api.Machine(Role.Administrator);
        var accounts = await administrator.GetFromJsonAsync<List<AccountId>>("/api/v1/accounts", TestContext.Current.CancellationToken);

        using var answer = await administrator.PutAsJsonAsync(
            $"/api/v1/accounts/{Assert.Single(accounts!).Id}/roles", new[] { "analyst" }, TestContext.Current.CancellationToken);
        var after = await administrator.GetStringAsync("/api/v1/accounts", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("\"administrator\"]", after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Accounts_ShortPassword_IsRefused()
    {
        await using var api = await ApiHost.Start(postgres);
        using var administrator = await api.Machine(Role.Administrator);

        using var answer = await administrator.PostAsJsonAsync(
            "/api/v1/accounts", new { name = "new", password = "elevenchars", roles = new[] { "analyst" } }, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    private static async Task<HttpResponseMessage> Post(Browser browser, string token)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/classes") { Content = JsonContent.Create(NewClass) };
        request.Headers.Add(Browser.AntiforgeryHeader, token);
        return await browser.Client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    private sealed record AccountId(Guid Id);
}
