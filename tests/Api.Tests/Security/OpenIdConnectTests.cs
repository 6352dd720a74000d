using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Toepan.Api.Security;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Security;

/// <summary>Sign-in through a provider, the whole way: challenge, authorize, token, key set, callback.</summary>
public sealed class OpenIdConnectTests(PostgresFixture postgres)
{
    [Fact]
    public async Task SignInPage_WithoutConfiguration_HasNoSuchButtonOrAddress()
    {
        await using var api = await ApiHost.Start(postgres);
        using var nobody = api.Anonymous();

        var page = await nobody.GetStringAsync("/sign-in", TestContext.Current.CancellationToken);
        using var start = await nobody.GetAsync("/sign-in/provider", TestContext.Current.CancellationToken);

        Assert.DoesNotContain("Sign in with", page, StringComparison.Ordinal);
        Assert.Equal("/sign-in", start.Headers.Location!.AbsolutePath);
    }

    [Fact]
    public async Task SignIn_UnknownSubject_HasNoRoleUntilOneIsGiven()
    {
        await using var provider = await IdentityProvider.Start();
        await using var api = await ApiHost.Start(postgres, settings: provider.Settings(("Title", "the works")));
        using var administrator = await api.Machine(Role.Administrator);
        using var browser = new Browser(api.Anonymous());

        Assert.Contains("Sign in with the works", await browser.Client.GetStringAsync("/sign-in", TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal("/tests", (await Drive(browser, "/tests"))!.ToString());
        using var refused = await browser.Client.GetAsync("/api/v1/classes", TestContext.Current.CancellationToken);
        await administrator.PutAsJsonAsync($"/api/v1/accounts/{await PeopleTests.Id(api, "runa")}/roles", new[] { "analyst" }, TestContext.Current.CancellationToken);
        using var allowed = await browser.Client.GetAsync("/api/v1/classes", TestContext.Current.CancellationToken);

        Assert.Equal((HttpStatusCode.Forbidden, HttpStatusCode.OK), (refused.StatusCode, allowed.StatusCode));
    }

    [Fact]
    public async Task SignIn_SameSubjectUnderAnotherName_IsTheSameAccount()
    {
        await using var provider = await IdentityProvider.Start();
        await using var api = await ApiHost.Start(postgres, settings: provider.Settings());
        await Drive(new Browser(api.Anonymous()), "/");
        provider.PreferredName = "another";
        await Drive(new Browser(api.Anonymous()), "/");
        (provider.Subject, provider.PreferredName) = ("subject-2", "runa");
        await Drive(new Browser(api.Anonymous()), "/");

        Assert.Equal(
            ["administrator", "runa", "runa-2"], await Sql.Column(api.Connections.Service, "SELECT user_name FROM lab.account ORDER BY 1"));
    }

    [Fact]
    public async Task SignIn_DisabledAccount_IsRefused()
    {
        await using var provider = await IdentityProvider.Start();
        await using var api = await ApiHost.Start(postgres, settings: provider.Settings());
        using var administrator = await api.Machine(Role.Administrator);
        using var browser = new Browser(api.Anonymous());
        await Drive(browser, "/");
        await administrator.PostAsync($"/api/v1/accounts/{await PeopleTests.Id(api, "runa")}/disable", null, TestContext.Current.CancellationToken);

        var led = await Drive(browser, "/");

        Assert.Equal(OpenIdConnectSignIn.RefusedPath, led!.ToString());
        Assert.Equal(HttpStatusCode.Unauthorized, (await browser.Client.GetAsync("/api/v1/classes", TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task SignIn_RoleClaimMapped_RolesFollowTheProvider()
    {
        await using var provider = await IdentityProvider.Start();
        await using var api = await ApiHost.Start(postgres, settings: provider.Settings(("RoleClaim", "groups"), ("Roles:crash-lab", "Engineer"), ("Roles:desk", "analyst")));
        provider.Groups = ["crash-lab", "desk", "administrator"];
        using var browser = new Browser(api.Anonymous());

        await Drive(browser, "/");
        var first = await Roles(browser);
        provider.Groups = ["desk"];
        await Drive(browser, "/");

        Assert.Equal("[\"engineer\",\"analyst\"]", first);
        Assert.Equal("[\"analyst\"]", await Roles(browser));
    }

    [Fact]
    public async Task SignIn_TokenSignedByAnotherKey_IsRefused()
    {
        await using var provider = await IdentityProvider.Start();
        await using var api = await ApiHost.Start(postgres, settings: provider.Settings());
        provider.Forges = true;

        var led = await Drive(new Browser(api.Anonymous()), "/");

        Assert.Equal(OpenIdConnectSignIn.RefusedPath, led!.ToString());
        Assert.Equal(1L, await Sql.Scalar(api.Connections.Service, "SELECT count(*) FROM lab.account"));
    }

    /// <summary>Follows the flow by hand, as a browser would; where it led in the end.</summary>
    private static async Task<Uri?> Drive(Browser browser, string back)
    {
        using var outside = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false });
        using var start = await browser.Client.GetAsync($"/sign-in/provider?return={Uri.EscapeDataString(back)}", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Redirect, start.StatusCode);
        using var authorized = await outside.GetAsync(start.Headers.Location, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Redirect, authorized.StatusCode);
        using var callback = await browser.Client.GetAsync(authorized.Headers.Location!.PathAndQuery, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Redirect, callback.StatusCode);
        if (!callback.Headers.Location!.ToString().Contains("/sign-in/provider/done", StringComparison.Ordinal))
        {
            return callback.Headers.Location;
        }

        using var done = await browser.Client.GetAsync(callback.Headers.Location, TestContext.Current.CancellationToken);
        return done.Headers.Location;
    }

    private static async Task<string> Roles(Browser browser) =>
        (await browser.Client.GetFromJsonAsync<JsonElement>("/api/v1/me", TestContext.Current.CancellationToken)).GetProperty("roles").GetRawText();
}
