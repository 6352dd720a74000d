using System.Net.Http.Headers;
using System.Text.Json;
using Microsoft.Playwright;
using Toepan.Support;

[assembly: AssemblyFixture(typeof(Toepan.Web.Tests.Support.Site))]

namespace Toepan.Web.Tests.Support;

/// <summary>The running service with some demo runs, and a browser to read it with. A missing browser fails every test that needs one.</summary>
public sealed class Site : IAsyncLifetime
{
    private const string Chromium = "/usr/bin/chromium";

    /// <summary>Sandbox off for root in containers; the rest keeps the browser from calling home.</summary>
    private static readonly string[] Flags =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    /// <summary>Runs that are there before the first test; others are free to be uploaded by one.</summary>
    public static IReadOnlyList<string> Runs { get; } = ["FO-0001", "FO-0002", "FO-0003", "FO-0005", "FO-0007", "FO-0008", "FO-0017"];

    private readonly DirectoryInfo _folder = TestFolders.Create();
    private IPlaywright? _playwright;

    public ServiceProcess Service { get; private set; } = default!;

    /// <summary>What the first start wrote down.</summary>
    public FirstRun Secrets { get; private set; } = default!;

    public IBrowser Browser { get; private set; } = default!;

    public async ValueTask InitializeAsync()
    {
        var data = Path.Combine(_folder.FullName, "data");
        Service = await ServiceProcess.Start(data);
        Secrets = await FirstRun.Read(Path.Combine(data, "first-run.json"));
        foreach (var run in Runs)
        {
            await Upload(DemoPackage.Zip(run));
        }

        await Attach("FO-0001", TestFilm.Bytes, "?name=numbered.webm&camera=onboard-left");
        await Attach("FO-0001", TestFilm.Photograph(), "?name=side.jpg&caption=From%20the%20left&moment=after");
        _playwright = await Playwright.CreateAsync();
        Browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Chromium, Args = Flags });
    }

    public async ValueTask DisposeAsync()
    {
        if (Browser is not null)
        {
            await Browser.DisposeAsync();
        }

        _playwright?.Dispose();
        Service?.Dispose();
        _folder.Delete(recursive: true);
    }

    /// <summary>A page of a fresh browser session, signed out.</summary>
    public async Task<IPage> Open(int width = 1440, ColorScheme scheme = ColorScheme.Light)
    {
        var context = await Browser.NewContextAsync(new()
        {
            BaseURL = Service.Address.ToString(),
            ViewportSize = new() { Width = width, Height = 900 },
            ColorScheme = scheme,
        });
        return await context.NewPageAsync();
    }

    /// <summary>A page of a fresh browser session, signed in as the first administrator.</summary>
    public async Task<IPage> OpenSignedIn(int width = 1440, ColorScheme scheme = ColorScheme.Light)
    {
        var page = await Open(width, scheme);
        await SignIn(page, Secrets.Name, Secrets.Password);
        await page.WaitForURLAsync(url => !url.Contains("/sign-in", StringComparison.Ordinal));
        return page;
    }

    public static async Task SignIn(IPage page, string name, string password)
    {
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("Name").FillAsync(name);
        await page.GetByLabel("Password").FillAsync(password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
    }

    /// <summary>Attaches a file to a run; its number.</summary>
    public async Task<long> Attach(string test, byte[] bytes, string query)
    {
        using var answer = JsonDocument.Parse(await Post($"/api/v1/tests/{test}/attachments{query}", bytes, "application/octet-stream"));
        return answer.RootElement.GetProperty("id").GetInt64();
    }

    private Task<string> Upload(byte[] zip) => Post("/api/v1/packages", zip, "application/zip");

    private async Task<string> Post(string path, byte[] bytes, string type)
    {
        using var client = new HttpClient { BaseAddress = Service.Address };
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", Secrets.IngestToken);
        using var body = new ByteArrayContent(bytes);
        body.Headers.ContentType = new MediaTypeHeaderValue(type);
        var answer = await client.PostAsync(new Uri(path, UriKind.Relative), body);
        if (!answer.IsSuccessStatusCode)
        {
            throw new InvalidOperationException($"The upload was answered {(int)answer.StatusCode}: {await answer.Content.ReadAsStringAsync()}");
        }

        return await answer.Content.ReadAsStringAsync();
    }
}
