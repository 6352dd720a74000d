using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Hosting;

/// <summary>data/first-run.json: written once, for its owner alone, and what it says works.</summary>
public sealed class FirstRunTests(PostgresFixture postgres)
{
    [Fact]
    public async Task FirstStart_File_HasExactlyTheContractsMembers()
    {
        await using var api = await ApiHost.Start(postgres, settings: new Dictionary<string, string> { ["urls"] = "http://0.0.0.0:5080" });
        using var file = JsonDocument.Parse(await File.ReadAllTextAsync(PathOf(api), TestContext.Current.CancellationToken));

        Assert.Equal(["baseUrl", "administrator", "ingestToken"], file.RootElement.EnumerateObject().Select(member => member.Name));
        Assert.Equal(["name", "password"], file.RootElement.GetProperty("administrator").EnumerateObject().Select(member => member.Name));
        Assert.Equal("http://127.0.0.1:5080", file.RootElement.GetProperty("baseUrl").GetString());
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(PathOf(api)));
    }

    [Fact]
    public async Task FirstStart_Secrets_SignInAndUploadAndRead()
    {
        await using var api = await ApiHost.Start(postgres);
        using var file = JsonDocument.Parse(await File.ReadAllTextAsync(PathOf(api), TestContext.Current.CancellationToken));
        using var browser = new Browser(api.Anonymous());
        using var machine = api.Anonymous();
        machine.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", file.RootElement.GetProperty("ingestToken").GetString());

        var administrator = file.RootElement.GetProperty("administrator");
        using var signedIn = await browser.TrySignIn(administrator.GetProperty("name").GetString()!, administrator.GetProperty("password").GetString()!);
        using var empty = new ByteArrayContent([]);
        using var upload = await machine.PostAsync("/api/v1/packages", empty, TestContext.Current.CancellationToken);
        using var read = await machine.GetAsync("/api/v1/tests", TestContext.Current.CancellationToken);
        using var manage = await machine.GetAsync("/api/v1/tokens", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.Redirect, signedIn.StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, upload.StatusCode);
        Assert.Equal(HttpStatusCode.OK, read.StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, manage.StatusCode);
        Assert.Equal(["Analyst", "Engineer"], await Sql.Column(api.Connections.Service, "SELECT unnest(roles) FROM lab.token WHERE name = 'ingest' ORDER BY 1"));
    }

    private static string PathOf(ApiHost api) => Path.Combine(api.DataFolder, "first-run.json");
}
