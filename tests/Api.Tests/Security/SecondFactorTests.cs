using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Time.Testing;
using Toepan.Api.Security;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Security;

/// <summary>A second factor set up, asked for, used up and taken away, through the pages.</summary>
public sealed partial class SecondFactorTests(PostgresFixture postgres)
{
    private const string Page = "/account/second-factor";
    private const string Somewhere = "/api/v1/classes";
    private static readonly TimeSpan Step = TimeSpan.FromSeconds(30);
    private readonly FakeTimeProvider clock = new(DateTimeOffset.UtcNow);

    [Fact]
    public async Task SignIn_Enrolled_TakesTheCodeToo()
    {
        await using var api = await Start();
        var (account, key, _) = await Enrolled(api);
        using var browser = new Browser(api.Anonymous());

        using var password = await browser.TrySignIn(account.Name, account.Password);
        var before = await Status(browser, Somewhere);
        clock.Advance(Step);
        using var wrong = await browser.Submit("/sign-in/code", "code", ("code", "000000"));
        using var right = await browser.Submit("/sign-in/code", "code", ("code", Code(key)));

        Assert.StartsWith("/sign-in/code", password.Headers.Location!.PathAndQuery, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Unauthorized, before);
        Assert.Equal(HttpStatusCode.OK, wrong.StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, right.StatusCode);
        Assert.Equal(HttpStatusCode.OK, await Status(browser, Somewhere));
    }

    /// <summary>RFC 6238, section 5.2: the verifier must not accept the second attempt of a code.</summary>
    [Fact]
    public async Task SignIn_CodeSeenBefore_IsRefused()
    {
        await using var api = await Start();
        var (account, key, _) = await Enrolled(api);
        clock.Advance(Step);
        var code = Code(key);
        using var first = new Browser(api.Anonymous());
        using var second = new Browser(api.Anonymous());

        await first.TrySignIn(account.Name, account.Password);
        await first.Submit("/sign-in/code", "code", ("code", code));
        await second.TrySignIn(account.Name, account.Password);
        await second.Submit("/sign-in/code", "code", ("code", code));

        Assert.Equal(HttpStatusCode.OK, await Status(first, Somewhere));
        Assert.Equal(HttpStatusCode.Unauthorized, await Status(second, Somewhere));
    }

    [Fact]
    public async Task SignIn_RecoveryCode_CountsOnce()
    {
        await using var api = await Start();
        var (account, _, codes) = await Enrolled(api);
        Assert.Equal(RecoveryCode.Count, codes.Distinct().Count());
        foreach (var expected in (HttpStatusCode[])[HttpStatusCode.OK, HttpStatusCode.Unauthorized])
        {
            using var browser = new Browser(api.Anonymous());
            await browser.TrySignIn(account.Name, account.Password);
            await browser.Submit("/sign-in/code", "code", ("code", codes[3].ToUpperInvariant().Replace('-', ' ')));
            Assert.Equal(expected, await Status(browser, Somewhere));
        }
    }

    [Fact]
    public async Task SignIn_FiveWrongCodes_LockTheAccount()
    {
        await using var api = await Start();
        var (account, key, _) = await Enrolled(api);
        using var browser = new Browser(api.Anonymous());
        await browser.TrySignIn(account.Name, account.Password);
        for (var attempt = 0; attempt < PasswordRules.FailuresBeforeLockout; attempt++)
        {
            await browser.Submit("/sign-in/code", "code", ("code", "000000"));
        }

        clock.Advance(Step);
        await browser.Submit("/sign-in/code", "code", ("code", Code(key)));

        Assert.Equal(HttpStatusCode.Unauthorized, await Status(browser, Somewhere));
    }

    [Fact]
    public async Task Reset_ByAnAdministrator_LetsThePasswordAloneIn()
    {
        await using var api = await Start();
        var (account, _, _) = await Enrolled(api);
        using var administrator = await api.Machine(Role.Administrator);
        var id = await Sql.Scalar(api.Connections.Service, $"SELECT id FROM lab.account WHERE user_name = '{account.Name}'");

        using var reset = await administrator.PostAsync($"/api/v1/accounts/{id}/reset-second-factor", null, TestContext.Current.CancellationToken);
        using var browser = new Browser(api.Anonymous());
        await browser.SignIn(account);

        Assert.Equal(HttpStatusCode.OK, reset.StatusCode);
        Assert.Equal(HttpStatusCode.OK, await Status(browser, Somewhere));
        Assert.Equal(0L, await Sql.Scalar(api.Connections.Service, "SELECT count(*) FROM lab.recovery_code"));
    }

    [Fact]
    public async Task Remove_WithACode_TurnsItOff()
    {
        await using var api = await Start();
        using var person = await api.Person(Role.Analyst);
        var (key, _) = await Enrol(person);
        clock.Advance(Step);

        var wrong = await Text(await person.Submit(Page, "remove", ("code", "123456")));
        var right = await Text(await person.Submit(Page, "remove", ("code", Code(key))));

        Assert.Contains("does not fit", wrong, StringComparison.Ordinal);
        Assert.Contains("Show the key", right, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, await Status(person, Somewhere));
    }

    [Fact]
    public async Task Enrolment_Secrets_AreNowhereStoredAsTheyAre()
    {
        await using var api = await Start();
        var (_, key, codes) = await Enrolled(api);

        foreach (var table in await Sql.Column(api.Connections.Owner, "SELECT format('%I.%I', schemaname, tablename) FROM pg_tables WHERE schemaname IN ('lab', 'pub')"))
        {
            Assert.Equal(0L, await Sql.Scalar(
                api.Connections.Owner,
                $"SELECT count(*) FROM {table} t WHERE t::text LIKE '%{Base32.Encode(key)}%' OR t::text LIKE '%{Convert.ToHexStringLower(key)}%' OR t::text LIKE '%{codes[0]}%'"));
        }
    }

    private Task<ApiHost> Start() => ApiHost.Start(postgres, services => services.Replace(ServiceDescriptor.Singleton<TimeProvider>(clock)));

    private async Task<(TestAccount Account, byte[] Key, string[] Codes)> Enrolled(ApiHost api)
    {
        var account = await TestAccount.Create(api.Services, Role.Analyst);
        using var browser = new Browser(api.Anonymous());
        await browser.SignIn(account);
        var (key, codes) = await Enrol(browser);
        return (account, key, codes);
    }

    private async Task<(byte[] Key, string[] Codes)> Enrol(Browser browser)
    {
        var shown = await Text(await browser.Submit(Page, "begin"));
        var key = Decode(ShownKey().Match(shown).Groups[1].Value.Replace(" ", "", StringComparison.Ordinal));
        var done = await Text(await browser.Submit(Page, "confirm", ("code", Code(key))));
        return (key, [.. ShownCode().Matches(done).Select(match => match.Groups[1].Value)]);
    }

    private string Code(byte[] key) => Totp.Code(key, Totp.StepAt(clock.GetUtcNow()));

    private static async Task<string> Text(HttpResponseMessage answer) => await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    private static async Task<HttpStatusCode> Status(Browser browser, string path) =>
        (await browser.Client.GetAsync(path, TestContext.Current.CancellationToken)).StatusCode;

    /// <summary>RFC 4648, section 6, the slow obvious way: five bits a letter, read as one long number.</summary>
    internal static byte[] Decode(string text)
    {
        var bits = string.Concat(text.Select(letter => Convert.ToString("ABCDEFGHIJKLMNOPQRSTUVWXYZ234567".IndexOf(letter, StringComparison.Ordinal), 2).PadLeft(5, '0')));
        return [.. Enumerable.Range(0, bits.Length / 8).Select(at => Convert.ToByte(bits.Substring(at * 8, 8), 2))];
    }

    [GeneratedRegex("<p class=\"secret\">([A-Z2-7 ]+)</p>")]
    private static partial Regex ShownKey();

    [GeneratedRegex("<li class=\"mono\">([a-z2-7-]+)</li>")]
    private static partial Regex ShownCode();
}
