using System.Net;
using System.Text.Json;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Patterns;
using Microsoft.Extensions.DependencyInjection;
using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Security;

/// <summary>Nothing but a literal list answers somebody without a role.</summary>
public sealed class AccessTests(PostgresFixture postgres)
{
    /// <summary>Every route that answers without signing in, static files apart. Adding one is a decision: write it here and say why.</summary>
    private static readonly string[] Anonymous =
    [
        "/denied", // where a role is missing
        "/error", // where the service failed
        "/health", // for whoever keeps the service running
        "/join", // makes an account, with an invitation alone
        "/not-found",
        "/preferences", // units and appearance, kept in the reader's own cookies
        "/released", // released sheets
        "/sheets/{slug}", // one of them; what is unreleased and what is unknown answer alike
        "/sheets/{slug}.json",
        "/sheets/{slug}.pdf",
        "/sheets/{slug}/v/{n:int}",
        "/sign-in",
        "/sign-in/code", // second factor, after a right password
        "/sign-out",
    ];

    [Fact]
    public async Task Endpoints_WithoutSignIn_AreExactlyTheLiteralList()
    {
        await using var api = await ApiHost.Start(postgres);

        var open = Endpoints(api).Where(endpoint => endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null && !IsAsset(endpoint))
            .Select(endpoint => endpoint.RoutePattern.RawText!.Insert(0, "/").Replace("//", "/", StringComparison.Ordinal)).Distinct().Order(StringComparer.Ordinal);

        Assert.Equal(Anonymous, open);
    }

    [Fact]
    public async Task Endpoints_AskedByNobody_AnswerWithoutData()
    {
        await using var api = await ApiHost.Start(postgres);
        using var nobody = api.Anonymous();
        var wrong = new List<string>();

        foreach (var (method, path) in Requests(api))
        {
            using var answer = await nobody.SendAsync(new HttpRequestMessage(method, path), TestContext.Current.CancellationToken);
            var machine = ApiPaths.Covers(path);
            var right = machine
                ? answer.StatusCode == HttpStatusCode.Unauthorized && answer.Content.Headers.ContentType?.MediaType == "application/problem+json"
                : answer.StatusCode == HttpStatusCode.Redirect && answer.Headers.Location!.ToString().Contains("/sign-in", StringComparison.Ordinal);
            if (!right)
            {
                wrong.Add($"{method} {path}: {(int)answer.StatusCode}");
            }
        }

        Assert.Empty(wrong);
    }

    [Fact]
    public async Task Endpoints_AskedWithoutARole_AreRefused()
    {
        await using var api = await ApiHost.Start(postgres);
        using var machine = await api.Machine();
        var wrong = new List<string>();

        foreach (var (method, path) in Requests(api).Where(request => ApiPaths.Covers(request.Path)))
        {
            using var answer = await machine.SendAsync(new HttpRequestMessage(method, path), TestContext.Current.CancellationToken);
            if (answer.StatusCode != HttpStatusCode.Forbidden)
            {
                wrong.Add($"{method} {path}: {(int)answer.StatusCode}");
            }
        }

        Assert.Empty(wrong);
    }

    [Theory]
    [InlineData("/api/v1/tests")]
    [InlineData("/api/v1/no-such-route")]
    [InlineData("/openapi/v1.json")]
    [InlineData("/schemas/programme.json")]
    [InlineData("/schemas/scheme.json")]
    public async Task Api_NobodyAsking_Answers401ProblemDetails(string path)
    {
        await using var api = await ApiHost.Start(postgres);
        using var nobody = api.Anonymous();
        nobody.DefaultRequestHeaders.Accept.ParseAdd("text/csv");

        using var answer = await nobody.GetAsync(path, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.Equal("Bearer", answer.Headers.WwwAuthenticate.ToString());
        await AssertProblem(answer, 401, "Not signed in");
    }

    [Fact]
    public async Task Api_RoleMissing_Answers403ProblemDetails()
    {
        await using var api = await ApiHost.Start(postgres);
        using var analyst = await api.Machine(Role.Analyst);

        using var answer = await analyst.GetAsync("/api/v1/accounts", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        await AssertProblem(answer, 403, "Not allowed");
    }

    [Fact]
    public async Task Page_SignedInWithoutARole_LeadsToDenied()
    {
        await using var api = await ApiHost.Start(postgres);
        using var person = await api.Person();

        using var answer = await person.Client.GetAsync("/", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("/denied", answer.Headers.Location!.AbsolutePath);
    }

    [Fact]
    public async Task Api_UnknownRoute_Answers404ProblemDetails()
    {
        await using var api = await ApiHost.Start(postgres);
        using var analyst = await api.Machine(Role.Analyst);

        using var answer = await analyst.GetAsync("/api/v1/no-such-route", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        await AssertProblem(answer, 404, "No such route");
    }

    /// <summary>An address no page has, and one whose page finds nothing: both are answered by the page that says so.</summary>
    [Theory]
    [InlineData("/no-such-page", "There is no such page")]
    [InlineData("/tests/FO-9999", "There is no test")]
    public async Task Page_NothingThere_Answers404WithAPage(string path, string says)
    {
        await using var api = await ApiHost.Start(postgres);
        using var analyst = await api.Person(Role.Analyst);

        using var answer = await analyst.Client.GetAsync(path, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains(says, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_Headers_KeepOthersScriptsAndFramesOut()
    {
        await using var api = await ApiHost.Start(postgres);
        using var nobody = api.Anonymous();

        using var answer = await nobody.GetAsync("/sign-in", TestContext.Current.CancellationToken);

        var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("script-src 'self';", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal("same-origin", answer.Headers.GetValues("Referrer-Policy").Single());
        Assert.True(answer.Headers.CacheControl!.NoStore);
        Assert.DoesNotContain("<script>", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.OrdinalIgnoreCase);
    }

    private static IEnumerable<RouteEndpoint> Endpoints(ApiHost api) =>
        api.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>();

    private static bool IsAsset(RouteEndpoint endpoint) =>
        endpoint.Metadata.Any(item => item.GetType().Name == "StaticAssetDescriptor")
        || endpoint.RoutePattern.RawText is "_framework/blazor.server.js" or "_framework/blazor.web.js" or "/_framework/opaque-redirect";

    /// <summary>A request for each mapped route that is not on the list, its parameters filled in.</summary>
    private static IEnumerable<(HttpMethod Method, string Path)> Requests(ApiHost api) =>
        from endpoint in Endpoints(api)
        where endpoint.Metadata.GetMetadata<IAllowAnonymous>() is null && !IsAsset(endpoint)
        let parts = endpoint.RoutePattern.PathSegments.Select(segment => string.Concat(segment.Parts.Select(Fill)))
        let methods = endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? ["GET"]
        from method in methods
        select (new HttpMethod(method), "/" + string.Join('/', parts));

    private static string Fill(RoutePatternPart part) => part switch
    {
        RoutePatternParameterPart { ParameterPolicies: { Count: > 0 } policies } when policies[0].Content == "guid" => Guid.Empty.ToString(),
        RoutePatternParameterPart => "1",
        RoutePatternLiteralPart literal => literal.Content,
        RoutePatternSeparatorPart separator => separator.Content,
        _ => throw new InvalidOperationException($"Unknown part {part}."),
    };

    private static async Task AssertProblem(HttpResponseMessage answer, int status, string title)
    {
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        using var problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal(status, problem.RootElement.GetProperty("status").GetInt32());
        Assert.Equal(title, problem.RootElement.GetProperty("title").GetString());
        Assert.NotEmpty(problem.RootElement.GetProperty("detail").GetString()!);
    }
}
