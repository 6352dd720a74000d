using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Toepan.Api.Security;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Security;

/// <summary>A person's token acts as the person, with no more than the person's present roles and its own scopes.</summary>
public sealed class PersonalTokenTests(PostgresFixture postgres)
{
    private static readonly object NewClass = new { key = "estate-car", title = "Estate cars" };

    [Fact]
    public async Task Issue_ScopeBeyondTheRoles_IsRefused()
    {
        await using var api = await ApiHost.Start(postgres);
        using var analyst = await api.Person(Role.Analyst);

        using var refused = await Issue(analyst, "upload");

        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
    }

    [Fact]
    public async Task Token_ForReading_ChangesNothing()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Person(Role.Manager);
        using var script = await Script(api, manager, "read");

        Assert.Equal(HttpStatusCode.OK, (await script.GetAsync("/api/v1/classes", TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await script.PostAsJsonAsync("/api/v1/classes", NewClass, TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task Token_OwnerLosesTheRole_LosesItToo()
    {
        await using var api = await ApiHost.Start(postgres);
        using var administrator = await api.Machine(Role.Administrator);
        var account = await TestAccount.Create(api.Services, Role.Manager);
        using var browser = new Browser(api.Anonymous());
        await browser.SignIn(account);
        using var script = await Script(api, browser, "read", "arrange");

        using var before = await script.PostAsJsonAsync("/api/v1/classes", NewClass, TestContext.Current.CancellationToken);
        await administrator.PutAsJsonAsync($"/api/v1/accounts/{await PeopleTests.Id(api, account.Name)}/roles", new[] { "reviewer" }, TestContext.Current.CancellationToken);
        using var after = await script.PostAsJsonAsync("/api/v1/classes", new { key = "coupe", title = "Coupes" }, TestContext.Current.CancellationToken);
        using var reading = await script.GetAsync("/api/v1/classes", TestContext.Current.CancellationToken);
        await administrator.PutAsJsonAsync($"/api/v1/accounts/{await PeopleTests.Id(api, account.Name)}/roles", Array.Empty<string>(), TestContext.Current.CancellationToken);
        using var nothing = await script.GetAsync("/api/v1/classes", TestContext.Current.CancellationToken);

        Assert.True(before.IsSuccessStatusCode);
        Assert.Equal(account.Name, await Sql.Scalar(api.Connections.Service, "SELECT who FROM lab.audit WHERE action = 'add class'"));
        Assert.Equal(
            (HttpStatusCode.Forbidden, HttpStatusCode.OK, HttpStatusCode.Forbidden), (after.StatusCode, reading.StatusCode, nothing.StatusCode));
    }

    [Fact]
    public async Task Token_OnTheOwnersAccount_CanDoNothing()
    {
        await using var api = await ApiHost.Start(postgres);
        using var administrator = await api.Person(Role.Administrator);
        using var script = await Script(api, administrator, "administer");

        using var another = await script.PostAsJsonAsync("/api/v1/me/tokens", Wanted("read"), TestContext.Current.CancellationToken);
        using var list = await script.GetAsync("/api/v1/me/tokens", TestContext.Current.CancellationToken);

        Assert.Equal((HttpStatusCode.Forbidden, HttpStatusCode.Forbidden), (another.StatusCode, list.StatusCode));
    }

    [Fact]
    public async Task Token_Revoked_IsRefusedAndListedWithItsLastUse()
    {
        await using var api = await ApiHost.Start(postgres);
        using var analyst = await api.Person(Role.Analyst);
        using var script = await Script(api, analyst, "read");
        await script.GetAsync("/api/v1/classes", TestContext.Current.CancellationToken);
        var listed = (await analyst.Client.GetFromJsonAsync<JsonElement>("/api/v1/me/tokens", TestContext.Current.CancellationToken))[0];

        using var page = await analyst.Submit("/account", "revoke", ("token", listed.GetProperty("id").GetString()!));
        using var after = await script.GetAsync("/api/v1/classes", TestContext.Current.CancellationToken);

        Assert.Equal(JsonValueKind.String, listed.GetProperty("lastUsedAt").ValueKind);
        Assert.Contains("revoked 20", await page.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Unauthorized, after.StatusCode);
    }

    [Fact]
    public async Task MachineToken_ByScopes_HasTheirRoles()
    {
        await using var api = await ApiHost.Start(postgres);
        using var administrator = await api.Machine(Role.Administrator);

        using var answer = await administrator.PostAsJsonAsync("/api/v1/tokens", new { name = "hall 2", scopes = new[] { "read", "upload" } }, TestContext.Current.CancellationToken);
        var token = (await answer.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("token");

        Assert.Equal("[\"analyst\",\"engineer\"]", token.GetProperty("roles").GetRawText());
    }

    /// <summary>A client with a new personal token of the person.</summary>
    internal static async Task<HttpClient> Script(ApiHost api, Browser person, params string[] scopes)
    {
        using var answer = await Issue(person, scopes);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        var secret = (await answer.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("secret").GetString();
        var client = api.Anonymous();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", secret);
        return client;
    }

    private static async Task<HttpResponseMessage> Issue(Browser person, params string[] scopes)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/me/tokens") { Content = JsonContent.Create(Wanted(scopes)) };
        request.Headers.Add(Browser.AntiforgeryHeader, await person.AntiforgeryToken("/preferences"));
        return await person.Client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    private static object Wanted(params string[] scopes) => new { name = "a script", scopes, expiresAt = DateTimeOffset.UtcNow.AddDays(30) };
}
