using System.Net.Http.Headers;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Toepan.Api.Security;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Support;

/// <summary>The whole service in the test's process over a database of its own: the composition that runs in production, nothing replaced unless asked.</summary>
public sealed class ApiHost : IAsyncDisposable
{
    private readonly Factory factory;
    private readonly DirectoryInfo folder;
    private int tokens;

    private ApiHost(Factory factory, DirectoryInfo folder, StoreConnections connections) =>
        (this.factory, this.folder, Connections) = (factory, folder, connections);

    public StoreConnections Connections { get; }

    public string DataFolder => folder.FullName;

    public IServiceProvider Services => factory.Services;

    /// <summary>Where a real browser reaches it; only of a host started with <c>listen</c>.</summary>
    public Uri Address => factory.ClientOptions.BaseAddress;

    /// <param name="postgres">Where its database is made.</param>
    /// <param name="services">Services to replace, e.g. the clock.</param>
    /// <param name="settings">Configuration beyond the usual.</param>
    /// <param name="listen">Listen on a port of the loopback, for a browser, instead of in memory.</param>
    public static async Task<ApiHost> Start(
        PostgresFixture postgres, Action<IServiceCollection>? services = null, IReadOnlyDictionary<string, string>? settings = null, bool listen = false)
    {
        var connections = await postgres.CreateDatabase();
        var folder = TestFolders.Create();
        var factory = new Factory(connections, folder.FullName, services, settings ?? new Dictionary<string, string>());
        if (listen)
        {
            factory.UseKestrel(0);
        }

        factory.StartServer();
        return new(factory, folder, connections);
    }

    /// <summary>Nobody. Redirects are not followed, cookies are kept.</summary>
    public HttpClient Anonymous() => factory.CreateClient(new() { AllowAutoRedirect = false, BaseAddress = factory.ClientOptions.BaseAddress });

    /// <summary>Nobody, without a memory: cookies are not kept either.</summary>
    public HttpClient Stranger() => factory.CreateClient(new() { AllowAutoRedirect = false, HandleCookies = false, BaseAddress = factory.ClientOptions.BaseAddress });

    /// <summary>A machine whose token has these roles.</summary>
    public async Task<HttpClient> Machine(params Role[] roles)
    {
        var secret = await Token(roles);
        var client = Anonymous();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", secret);
        return client;
    }

    /// <summary>Makes a token with these roles; its secret.</summary>
    public async Task<string> Token(Role[] roles, DateTimeOffset? expiresAt = null, DateTimeOffset? revokedAt = null)
    {
        var secret = TokenSecret.New();
        await using var db = await Services.GetRequiredService<IDbContextFactory<ProgrammeDb>>().CreateDbContextAsync();
        db.Add(new TokenRow
        {
            Name = $"test {Interlocked.Increment(ref tokens)}", Hash = TokenSecret.Hash(secret), Roles = roles,
            CreatedAt = DateTimeOffset.UtcNow, CreatedBy = "test", ExpiresAt = expiresAt, RevokedAt = revokedAt,
        });
        await db.SaveChangesAsync();
        return secret;
    }

    /// <summary>Makes an account with these roles and signs it in through the sign-in page.</summary>
    public async Task<Browser> Person(params Role[] roles)
    {
        var account = await TestAccount.Create(Services, roles);
        var browser = new Browser(Anonymous());
        await browser.SignIn(account);
        return browser;
    }

    public async ValueTask DisposeAsync()
    {
        await factory.DisposeAsync();
        folder.Delete(recursive: true);
    }

    private sealed class Factory(
        StoreConnections connections, string folder, Action<IServiceCollection>? services, IReadOnlyDictionary<string, string> settings)
        : WebApplicationFactory<Program>
    {
        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            builder.UseEnvironment("Production");
            builder.UseSetting("ConnectionStrings:Programme", connections.Owner);
            builder.UseSetting("Store:ServiceRole", connections.ServiceRole);
            builder.UseSetting("Store:PublicRole", connections.PublicRole);
            builder.UseSetting("Store:AnalystRole", connections.AnalystRole);
            builder.UseSetting("data", folder);
            builder.UseSetting("Logging:LogLevel:Default", "Warning");
            foreach (var (key, value) in settings)
            {
                builder.UseSetting(key, value);
            }

            builder.ConfigureTestServices(all => all.ConfigureDbContext<ProgrammeDb>(options => options.AddInterceptors(new AuditGuard())));
            if (services is not null)
            {
                builder.ConfigureTestServices(services);
            }
        }
    }
}
