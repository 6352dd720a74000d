using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Time.Testing;
using Toepan.Api.Security;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Security;

/// <summary>People are invited, disabled, given roles and sign out everywhere; what is refused is refused with the next request.</summary>
public sealed class PeopleTests(PostgresFixture postgres)
{
    private const string Somewhere = "/api/v1/classes";
    private const string Password = "nine unrelated folded words";

    [Fact]
    public async Task Invitation_Followed_MakesTheAccountOnce()
    {
        await using var api = await ApiHost.Start(postgres);
        using var administrator = await api.Machine(Role.Administrator);
        var path = await Invite(administrator, "a colleague", "reviewer");
        using var browser = new Browser(api.Anonymous());
        using var late = api.Anonymous();

        using var weak = await browser.Submit(path, "join", ("name", "edda"), ("password", "too short"), ("again", "too short"));
        using var named = await browser.Submit(path, "join", ("name", "edda"), ("password", "edda and nothing else"), ("again", "edda and nothing else"));
        using var made = await browser.Submit(path, "join", ("name", "edda"), ("password", Password), ("again", Password));
        using var again = await late.GetAsync(path, TestContext.Current.CancellationToken);
        using var unknown = await late.GetAsync("/join?invitation=nothing", TestContext.Current.CancellationToken);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK, HttpStatusCode.Redirect), (weak.StatusCode, named.StatusCode, made.StatusCode));
        Assert.Equal("[\"reviewer\"]", (await Me(browser)).GetProperty("roles").GetRawText());
        Assert.Equal((HttpStatusCode.Gone, HttpStatusCode.Gone), (again.StatusCode, unknown.StatusCode));
        Assert.Equal("used", (await administrator.GetFromJsonAsync<JsonElement>("/api/v1/invitations", TestContext.Current.CancellationToken))[0].GetProperty("state").GetString());
        Assert.Equal("edda", await Sql.Scalar(api.Connections.Service, "SELECT who FROM lab.audit WHERE action = 'join'"));
    }

    [Fact]
    public async Task Invitation_ExpiredOrWithdrawn_MakesNothing()
    {
        var clock = new FakeTimeProvider(DateTimeOffset.UtcNow);
        await using var api = await ApiHost.Start(postgres, services => services.Replace(ServiceDescriptor.Singleton<TimeProvider>(clock)));
        using var administrator = await api.Machine(Role.Administrator);
        var withdrawn = await Invite(administrator, "withdrawn", "analyst");
        var list = await administrator.GetFromJsonAsync<JsonElement>("/api/v1/invitations", TestContext.Current.CancellationToken);
        await administrator.DeleteAsync($"/api/v1/invitations/{list[0].GetProperty("id").GetString()}", TestContext.Current.CancellationToken);
        var expiring = await Invite(administrator, "expiring", "analyst");
        using var nobody = api.Anonymous();

        Assert.Equal(HttpStatusCode.Gone, (await nobody.GetAsync(withdrawn, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await nobody.GetAsync(expiring, TestContext.Current.CancellationToken)).StatusCode);
        clock.Advance(TimeSpan.FromDays(7));
        Assert.Equal(HttpStatusCode.Gone, (await nobody.GetAsync(expiring, TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task Disable_SessionAndPersonalToken_StopAtOnce()
    {
        await using var api = await ApiHost.Start(postgres);
        using var administrator = await api.Machine(Role.Administrator);
        var account = await TestAccount.Create(api.Services, Role.Engineer);
        using var browser = new Browser(api.Anonymous());
        await browser.SignIn(account);
        using var script = await PersonalTokenTests.Script(api, browser, "read");
        var before = (await Status(browser.Client), await Status(script));

        using var disabled = await administrator.PostAsync($"/api/v1/accounts/{await Id(api, account.Name)}/disable", null, TestContext.Current.CancellationToken);
        var after = (await Status(browser.Client), await Status(script));
        using var signIn = await new Browser(api.Anonymous()).TrySignIn(account.Name, account.Password);
        await administrator.PostAsync($"/api/v1/accounts/{await Id(api, account.Name)}/enable", null, TestContext.Current.CancellationToken);
        using var again = new Browser(api.Anonymous());
        await again.SignIn(account);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), before);
        Assert.Equal(HttpStatusCode.OK, disabled.StatusCode);
        Assert.Equal((HttpStatusCode.Unauthorized, HttpStatusCode.Unauthorized), after);
        Assert.Equal(HttpStatusCode.OK, signIn.StatusCode);
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Unauthorized), (await Status(again.Client), await Status(script)));
    }

    [Fact]
    public async Task Disable_LastAdministrator_IsRefused()
    {
        await using var api = await ApiHost.Start(postgres);
        using var machine = await api.Machine(Role.Administrator);
        var first = await Id(api, "administrator");
        var second = await TestAccount.Create(api.Services, Role.Administrator);

        using var one = await machine.PostAsync($"/api/v1/accounts/{await Id(api, second.Name)}/disable", null, TestContext.Current.CancellationToken);
        using var last = await machine.PostAsync($"/api/v1/accounts/{first}/disable", null, TestContext.Current.CancellationToken);
        using var demoted = await machine.PutAsJsonAsync($"/api/v1/accounts/{first}/roles", new[] { "manager" }, TestContext.Current.CancellationToken);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Conflict, HttpStatusCode.Conflict), (one.StatusCode, last.StatusCode, demoted.StatusCode));
        Assert.Equal(DBNull.Value, await Sql.Scalar(api.Connections.Service, "SELECT disabled_at FROM lab.account WHERE user_name = 'administrator'"));
    }

    [Fact]
    public async Task Roles_Changed_HoldWithTheNextRequest()
    {
        await using var api = await ApiHost.Start(postgres);
        using var administrator = await api.Machine(Role.Administrator);
        var account = await TestAccount.Create(api.Services, Role.Manager);
        using var browser = new Browser(api.Anonymous());
        await browser.SignIn(account);
        var before = await browser.Client.GetAsync("/api/v1/audit", TestContext.Current.CancellationToken);

        await administrator.PutAsJsonAsync($"/api/v1/accounts/{await Id(api, account.Name)}/roles", new[] { "analyst" }, TestContext.Current.CancellationToken);
        var after = await browser.Client.GetAsync("/api/v1/audit", TestContext.Current.CancellationToken);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Forbidden), (before.StatusCode, after.StatusCode));
        Assert.Equal(HttpStatusCode.OK, await Status(browser.Client));
    }

    [Fact]
    public async Task Password_Changed_EndsOtherSessionsAndKeepsThisOne()
    {
        await using var api = await ApiHost.Start(postgres);
        var account = await TestAccount.Create(api.Services, Role.Analyst);
        using var here = new Browser(api.Anonymous());
        using var elsewhere = new Browser(api.Anonymous());
        await here.SignIn(account);
        await elsewhere.SignIn(account);

        using var wrong = await here.Submit("/account", "password", ("present", "not this one"), ("wanted", Password), ("again", Password));
        var stillThere = await Status(elsewhere.Client);
        using var right = await here.Submit("/account", "password", ("present", account.Password), ("wanted", Password), ("again", Password));

        Assert.Contains("The present password is not right", await wrong.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Contains("The password is changed", await right.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, stillThere);
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Unauthorized), (await Status(here.Client), await Status(elsewhere.Client)));
    }

    [Fact]
    public async Task SignOutEverywhere_EverySession_Ends()
    {
        await using var api = await ApiHost.Start(postgres);
        var account = await TestAccount.Create(api.Services, Role.Analyst);
        using var here = new Browser(api.Anonymous());
        using var elsewhere = new Browser(api.Anonymous());
        await here.SignIn(account);
        await elsewhere.SignIn(account);

        using var answer = await here.Submit("/account", "everywhere");

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal((HttpStatusCode.Unauthorized, HttpStatusCode.Unauthorized), (await Status(here.Client), await Status(elsewhere.Client)));
    }

    [Fact]
    public async Task Names_OfPeopleAndMachines_AreNeverShared()
    {
        await using var api = await ApiHost.Start(postgres);
        using var administrator = await api.Machine(Role.Administrator);
        var account = await TestAccount.Create(api.Services, Role.Analyst);

        using var token = await administrator.PostAsJsonAsync("/api/v1/tokens", new { name = account.Name.ToUpperInvariant(), roles = new[] { "analyst" } }, TestContext.Current.CancellationToken);
        using var person = await administrator.PostAsJsonAsync("/api/v1/accounts", new { name = "INGEST", password = Password, roles = new[] { "analyst" } }, TestContext.Current.CancellationToken);

        Assert.Equal((HttpStatusCode.Conflict, HttpStatusCode.Conflict), (token.StatusCode, person.StatusCode));
    }

    internal static async Task<object?> Id(ApiHost api, string name) => await Sql.Scalar(api.Connections.Service, $"SELECT id FROM lab.account WHERE user_name = '{name}'");

    private static async Task<string> Invite(HttpClient administrator, string whom, string role)
    {
        using var answer = await administrator.PostAsJsonAsync("/api/v1/invitations", new { whom, roles = new[] { role } }, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return (await answer.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("path").GetString()!;
    }

    private static async Task<JsonElement> Me(Browser browser) => await browser.Client.GetFromJsonAsync<JsonElement>("/api/v1/me", TestContext.Current.CancellationToken);

    private static async Task<HttpStatusCode> Status(HttpClient client) => (await client.GetAsync(Somewhere, TestContext.Current.CancellationToken)).StatusCode;
}
