using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Time.Testing;
using Toepan.Api.Security;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Security;

/// <summary>Bearer tokens: random, kept as hashes, refused once expired or revoked.</summary>
public sealed class TokenTests(PostgresFixture postgres)
{
    private const string Somewhere = "/api/v1/classes";

    /// <summary>SHA-256 of "abc": FIPS 180-4, example of the standard.</summary>
    [Fact]
    public void Hash_KnownText_IsItsSha256() =>
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", Convert.ToHexStringLower(TokenSecret.Hash("abc")));

    [Fact]
    public void New_Secrets_Hold256RandomBits()
    {
        var secrets = Enumerable.Range(0, 100).Select(_ => TokenSecret.New()).ToHashSet();

        Assert.Equal(100, secrets.Count);
        Assert.All(secrets, secret => Assert.Equal(TokenSecret.Prefix.Length + 43, secret.Length)); // 256 bits in base64url
    }

    [Fact]
    public async Task Issue_Token_IsShownOnceAndNowhereStored()
    {
        await using var api = await ApiHost.Start(postgres);
        using var administrator = await api.Machine(Role.Administrator);

        using var answer = await administrator.PostAsJsonAsync(
            "/api/v1/tokens", new { name = "hall 2", roles = new[] { "engineer" } }, TestContext.Current.CancellationToken);
        var secret = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement.GetProperty("secret").GetString()!;
        var list = await administrator.GetStringAsync("/api/v1/tokens", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        Assert.Contains("hall 2", list, StringComparison.Ordinal);
        Assert.DoesNotContain(secret, list, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, await Ask(api, secret));
        foreach (var table in await Sql.Column(api.Connections.Owner, "SELECT format('%I.%I', schemaname, tablename) FROM pg_tables WHERE schemaname IN ('lab', 'pub')"))
        {
            Assert.Equal(0L, await Sql.Scalar(api.Connections.Owner, $"SELECT count(*) FROM {table} t WHERE t::text LIKE '%{secret}%'"));
        }
    }

    [Fact]
    public async Task Authenticate_Expiry_IsRefusedFromThatInstant()
    {
        var clock = new FakeTimeProvider(new(2031, 3, 14, 12, 0, 0, TimeSpan.Zero));
        await using var api = await ApiHost.Start(postgres, services => services.Replace(ServiceDescriptor.Singleton<TimeProvider>(clock)));
        var secret = await api.Token([Role.Analyst], expiresAt: clock.GetUtcNow().AddHours(1));

        clock.Advance(TimeSpan.FromHours(1) - TimeSpan.FromTicks(10));
        Assert.Equal(HttpStatusCode.OK, await Ask(api, secret));
        clock.Advance(TimeSpan.FromTicks(10));
        Assert.Equal(HttpStatusCode.Unauthorized, await Ask(api, secret));
    }

    [Fact]
    public async Task Authenticate_RevokedOrUnknown_IsRefused()
    {
        await using var api = await ApiHost.Start(postgres);
        var revoked = await api.Token([Role.Analyst], revokedAt: DateTimeOffset.UnixEpoch);

        Assert.Equal(HttpStatusCode.Unauthorized, await Ask(api, revoked));
        Assert.Equal(HttpStatusCode.Unauthorized, await Ask(api, TokenSecret.New()));
        Assert.Equal(HttpStatusCode.Unauthorized, await Ask(api, ""));
    }

    [Fact]
    public async Task Revoke_Token_IsRefusedAndAudited()
    {
        await using var api = await ApiHost.Start(postgres);
        using var administrator = await api.Machine(Role.Administrator);
        var secret = await api.Token([Role.Analyst]);
        await using var db = await api.Services.GetRequiredService<IDbContextFactory<ProgrammeDb>>().CreateDbContextAsync(TestContext.Current.CancellationToken);
        var id = (await db.Set<TokenRow>().SingleAsync(row => row.Hash == TokenSecret.Hash(secret), TestContext.Current.CancellationToken)).Id;

        using var answer = await administrator.DeleteAsync($"/api/v1/tokens/{id}", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, await Ask(api, secret));
        Assert.Equal(1L, await Sql.Scalar(api.Connections.Service, "SELECT count(*) FROM lab.audit WHERE action = 'revoke token'"));
    }

    [Fact]
    public async Task Authenticate_Use_IsNotedToTheMinute()
    {
        await using var api = await ApiHost.Start(postgres);
        var secret = await api.Token([Role.Analyst]);

        await Ask(api, secret);
        var first = await Sql.Scalar(api.Connections.Service, "SELECT last_used_at FROM lab.token WHERE name = 'test 1'");
        await Ask(api, secret);

        Assert.IsType<DateTime>(first);
        Assert.Equal(first, await Sql.Scalar(api.Connections.Service, "SELECT last_used_at FROM lab.token WHERE name = 'test 1'"));
    }

    private static async Task<HttpStatusCode> Ask(ApiHost api, string secret)
    {
        using var client = api.Anonymous();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", secret);
        using var answer = await client.GetAsync(Somewhere, TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }
}
