using System.Net;
using Npgsql;
using Toepan.Api.Security;
using Toepan.Api.Tests.Packages;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Ratings;

/// <summary>Bringing, trying and adopting schemes against a real server.</summary>
public sealed class SchemeRouteTests(PostgresFixture postgres)
{
    private const string Key = "offset-frontal-2";

    [Fact]
    public async Task Upload_Draft_IsKeptReplacedAndServedAsItCame()
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        var (first, second) = (SchemeClient.Document(), SchemeClient.Strict());

        Assert.Equal(HttpStatusCode.OK, (await manager.Bring(first, dryRun: true)).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await manager.Read($"/api/v1/schemes/{Key}")).Status);
        Assert.Equal(HttpStatusCode.Created, (await manager.Bring(first)).Status);
        Assert.Equal(HttpStatusCode.OK, (await manager.Bring(first)).Status);
        var replaced = await manager.Bring(second);

        Assert.Equal(HttpStatusCode.Created, replaced.Status);
        Assert.Equal(64, replaced.Json.GetProperty("replaces").GetString()!.Length);
        Assert.Equal(second, await manager.GetStringAsync(new Uri($"/api/v1/schemes/{Key}/document", UriKind.Relative), TestContext.Current.CancellationToken));
        var detail = (await manager.Read($"/api/v1/schemes/{Key}")).Json;
        Assert.All(detail.GetProperty("coherence").EnumerateArray(), check => Assert.True(check.GetProperty("passed").GetBoolean()));
        Assert.Equal(2L, await Sql.Scalar(api.Connections.Owner, "SELECT count(*) FROM lab.audit WHERE action = 'scheme'"));
    }

    /// <summary>Broken and contradictory documents are refused with the line, the value and the limit; nothing is kept.</summary>
    [Theory]
    [InlineData("\"high\": 80, \"moderate\": 160, \"low\": 240", "\"high\": 80, \"moderate\": 60, \"low\": 240", "these are 80, 60, 240")]
    [InlineData("\"stepsBetterThanWorst\": 1", "\"stepsBetterThanWorst\": 7", "is 7")]
    [InlineData("\"when\": \"very low\", \"atBest\": \"low\"", "\"when\": \"very low\", \"atBest\": \"high\"", "better level")]
    [InlineData("\"caps\": [", "\"cups\": [], \"caps\": [", "cups is not known here")]
    public async Task Upload_BrokenDocument_IsRefusedWithItsLine(string from, string to, string says)
    {
        await using var api = await ApiHost.Start(postgres);
        using var manager = await api.Machine(Role.Manager);
        var document = SchemeClient.Document();
        var line = document[..document.IndexOf(from, StringComparison.Ordinal)].Count(c => c == '\n') + 1;

        var answer = await manager.Bring(document.Replace(from, to, StringComparison.Ordinal));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Contains(
            answer.Json.GetProperty("problems").EnumerateArray(),
            problem => problem.GetProperty("line").GetInt32() == line && problem.GetProperty("message").GetString()!.Contains(says, StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.NotFound, (await manager.Read($"/api/v1/schemes/{Key}")).Status);
    }

    [Fact]
    public async Task Upload_WithoutTheRole_IsForbidden()
    {
        await using var api = await ApiHost.Start(postgres);
        using var analyst = await api.Machine(Role.Analyst, Role.Reviewer, Role.Engineer, Role.Communications);

        Assert.Equal(HttpStatusCode.Forbidden, (await analyst.Bring(SchemeClient.Document())).Status);
        Assert.Equal(HttpStatusCode.Forbidden, (await analyst.Act("/api/v1/schemes/offset-frontal-1/adopt", new { confirm = "offset-frontal-1", reason = "r" })).Status);
        Assert.Equal(HttpStatusCode.OK, (await analyst.Read("/api/v1/schemes/offset-frontal-1/what-if")).Status);
    }

    /// <summary>A scheme with other regions is brought, tried, adopted; every page and answer about a run goes on working with its regions.</summary>
    [Fact]
    public async Task Adopt_IndependentScheme_RatesEveryRunAndNewUploads()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Manager, Role.Engineer);
        foreach (var number in new[] { 1, 2, 8, 23 })
        {
            await lab.Upload(TestPackages.Zip(number));
        }

        Assert.Equal(HttpStatusCode.Created, (await lab.Bring(SchemeClient.Independent(), yaml: true)).Status);
        var tried = (await lab.Read("/api/v1/tests/FO-0002/rating?scheme=trunk-and-limbs-1")).Json;
        var whatIf = (await lab.Read("/api/v1/schemes/trunk-and-limbs-1/what-if")).Json;
        Assert.Equal(4, whatIf.GetProperty("runs").GetInt32());
        Assert.Equal(4, whatIf.GetProperty("flows").EnumerateArray().Sum(flow => flow.GetProperty("runs").GetInt32()));
        Assert.Equal(HttpStatusCode.BadRequest, (await lab.Act("/api/v1/schemes/trunk-and-limbs-1/adopt", new { confirm = "yes", reason = "new year" })).Status);

        var adopted = await lab.Act("/api/v1/schemes/trunk-and-limbs-1/adopt", new { confirm = "trunk-and-limbs-1", reason = "new year" });

        Assert.Equal(HttpStatusCode.OK, adopted.Status);
        var done = await lab.WaitFor(adopted.Json.GetProperty("id").GetInt64(), "finished");
        Assert.Equal((4, 4), (done.GetProperty("summary").GetProperty("runs").GetInt32(), done.GetProperty("summary").GetProperty("done").GetInt32()));
        var rating = (await lab.Read("/api/v1/tests/FO-0002/rating")).Json;
        Assert.Equal("trunk-and-limbs-1", rating.GetProperty("scheme").GetString());
        Assert.Equal(tried.GetProperty("overall").GetString(), rating.GetProperty("overall").GetString());
        Assert.Equal(tried.GetProperty("inputs").GetRawText(), rating.GetProperty("inputs").GetRawText());
        Assert.NotEqual(0, rating.GetProperty("arithmetic").GetArrayLength());
        foreach (var change in whatIf.GetProperty("changes").EnumerateArray())
        {
            var now = (await lab.Read($"/api/v1/tests/{change.GetProperty("test").GetString()}/rating")).Json;
            Assert.Equal(change.GetProperty("after").GetString(), now.GetProperty("overall").GetString());
            Assert.NotEmpty(change.GetProperty("why").GetString()!);
        }

        await lab.Upload(TestPackages.Zip(3));
        Assert.Equal("trunk-and-limbs-1", (await lab.Read("/api/v1/tests/FO-0003/rating")).Text("scheme"));
        foreach (var path in new[] { "holds", "sensitivity", "keystones", "sheet" })
        {
            Assert.NotEqual(HttpStatusCode.InternalServerError, (await lab.Read($"/api/v1/tests/FO-0002/{path}")).Status);
        }

        using var person = await api.Person(Role.Analyst);
        foreach (var page in new[] { "/tests/FO-0002", "/tests/FO-0002/holds", "/sheets/preview/FO-0002", "/tests/FO-0002/sheet", "/" })
        {
            using var answer = await person.Client.GetAsync(new Uri(page, UriKind.Relative), TestContext.Current.CancellationToken);
            Assert.True((int)answer.StatusCode < 500, $"{page}: {answer.StatusCode}");
        }
    }

    [Fact]
    public async Task Edition_ThatHasRatedARun_IsFixedByServiceAndDatabase()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Manager, Role.Engineer);
        await lab.Upload(TestPackages.Zip(2));
        await lab.Bring(SchemeClient.Strict());
        var adopted = await lab.Act($"/api/v1/schemes/{Key}/adopt", new { confirm = Key, reason = "stricter" });
        await lab.WaitFor(adopted.Json.GetProperty("id").GetInt64(), "finished");

        Assert.Equal(HttpStatusCode.Conflict, (await lab.Bring(SchemeClient.Document())).Status);
        Assert.Equal(HttpStatusCode.Conflict, (await lab.Act($"/api/v1/schemes/{Key}/adopt", new { confirm = Key, reason = "again" })).Status);

        // Past the service: the database's own refusal, with the service's login.
        Assert.Equal(PostgresErrorCodes.IntegrityConstraintViolation, await Sql.Refusal(
            api.Connections.Service,
            "INSERT INTO lab.scheme_document (sha256, file, bytes, at, by) VALUES ('other', 'x.json', '\\x00', now(), 'x'); "
            + $"INSERT INTO lab.scheme_edition (key, sha256, at, by) VALUES ('{Key}', 'other', now(), 'x')"));
        Assert.Equal(
            PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(api.Connections.Service, "UPDATE lab.scheme_document SET file = 'x' WHERE sha256 <> ''"));
    }

    [Fact]
    public async Task WhatIf_AsCsv_HasARowForEachChange()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Manager, Role.Engineer);
        await lab.Upload(TestPackages.Zip(2));
        await lab.Bring(SchemeClient.Strict());
        lab.DefaultRequestHeaders.TryAddWithoutValidation("Accept", "text/csv");

        var csv = await lab.GetStringAsync(new Uri($"/api/v1/schemes/{Key}/what-if", UriKind.Relative), TestContext.Current.CancellationToken);

        var rows = csv.Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("test,vehicle,class,valid,released,before,after,rule,why", rows[0]);
        Assert.StartsWith("FO-0002,", Assert.Single(rows[1..]), StringComparison.Ordinal);
        Assert.Contains("bound.", rows[1], StringComparison.Ordinal);
    }
}
