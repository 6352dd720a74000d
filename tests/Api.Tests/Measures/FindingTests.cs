using System.Net;
using Toepan.Api.Security;
using Toepan.Api.Tests.Packages;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Measures;

/// <summary>Findings changed beside the package: who reads findings sees them, and the package stays as it was. Levels by design §6, caps.</summary>
public sealed class FindingTests(PostgresFixture postgres)
{
    private const string Run = "/api/v1/tests/FO-0002";
    private const string Findings = $"{Run}/findings";
    private static readonly object Fire = new { kind = "fire", region = "vehicle", severity = "severe", note = "Flame under the bonnet" };

    [Fact]
    public async Task Add_SevereFire_HoldsTheOverallAndEveryReaderSeesIt()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var before = (await lab.Read($"{Run}/rating")).Text("overall");

        var answer = await lab.Post(Findings, Fire);

        Assert.Equal(HttpStatusCode.Created, answer.Status);
        Assert.NotEqual("very low", before);
        Assert.Equal("very low", (await lab.Read($"{Run}/rating")).Text("overall"));
        Assert.Equal("very low", (await lab.Read($"{Run}/rating?scheme=offset-frontal-1")).Text("overall"));
        Assert.Contains("Flame under the bonnet", (await lab.Read($"{Run}/sheet")).Json.GetProperty("findings").GetRawText(), StringComparison.Ordinal);
        Assert.Equal("very low", (await lab.Read($"{Run}/keystones")).Json.GetProperty("overall").ToString());
        Assert.Contains("Flame under the bonnet", await Exported(lab, "Movie/findings.csv"), StringComparison.Ordinal);
        Assert.Equal(TestPackages.Whole, await lab.GetByteArrayAsync($"{Run}/package", TestContext.Current.CancellationToken));
        Assert.Equal("Added the finding fire (severe, vehicle)", (await lab.Read(Run)).Json.GetProperty("history")[0].GetProperty("what").GetString());
    }

    [Fact]
    public async Task Withdraw_Added_GivesTheEarlierRatingAndSaysWhy()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var before = (await lab.Read($"{Run}/rating")).Json.WithoutInputs();
        await lab.Post(Findings, Fire);

        var answer = await lab.Post($"{Findings}/a1/withdrawal", new { version = 1, reason = "Steam, seen on the other camera" });

        Assert.Equal(HttpStatusCode.OK, answer.Status);
        Assert.Equal(before, (await lab.Read($"{Run}/rating")).Json.WithoutInputs());
        Assert.DoesNotContain("a1", Ids(await lab.Read(Findings)));
        var kept = (await lab.Read($"{Findings}?all=true")).Json.EnumerateArray().Single(finding => finding.GetProperty("id").GetString() == "a1");
        Assert.Equal("withdrawn", kept.GetProperty("without").GetString());
        Assert.Equal("Steam, seen on the other camera", kept.GetProperty("changes")[1].GetProperty("reason").GetString());
        Assert.Equal(HttpStatusCode.Conflict, (await lab.Post($"{Findings}/a1/withdrawal", new { version = 2, reason = "again" })).Status);
    }

    [Fact]
    public async Task Correct_PackagesHeadStrike_IsHeldAgainstHeadContactAtItsNewTime()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var strike = (await lab.Read(Findings)).Json.EnumerateArray().First(finding => finding.GetProperty("kind").GetString() == "head-strike");
        Assert.True(Agrees(await lab.Read(Run)));

        var answer = await lab.PutJson($"{Findings}/{strike.GetProperty("id")}", new
        {
            timeMs = 2.0, kind = "head-strike", region = "head", severity = "note", note = "moved", position = 1, version = 0, reason = "wrong frame counted",
        });

        Assert.Equal(HttpStatusCode.OK, answer.Status);
        Assert.False(Agrees(await lab.Read(Run)));
        Assert.Equal(strike.GetProperty("line").GetInt32(), answer.Json.GetProperty("finding").GetProperty("line").GetInt32());
    }

    [Fact]
    public async Task Correct_SecondOfTwoEditors_IsToldAndNothingIsOverwritten()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        await lab.Post(Findings, Fire);

        var first = await lab.PutJson($"{Findings}/a1", Corrected("note", 1));
        var second = await lab.PutJson($"{Findings}/a1", Corrected("concern", 1));

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Conflict), (first.Status, second.Status));
        Assert.Equal("Changed meanwhile", second.Text("title"));
        Assert.Equal("note", (await lab.Read(Findings)).Json.EnumerateArray().Last().GetProperty("severity").GetString());
    }

    [Fact]
    public async Task Add_TheVerySameByTwo_IsKeptOnce()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);

        var answers = await Task.WhenAll(lab.Post(Findings, Fire), lab.Post(Findings, Fire));

        Assert.Equal([HttpStatusCode.Created, HttpStatusCode.Conflict], answers.Select(answer => answer.Status).Order());
    }

    [Fact]
    public async Task Replacement_OfThePackage_KeepsWhatWasAddedAndRatesWithIt()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        await lab.Post(Findings, Fire);
        var replaces = $"?replaces={PackageClient.Sha256(TestPackages.Whole)}&reason=hall%20corrected";

        var answer = await lab.Upload(TestPackages.Reworded(TestPackages.Whole), replaces);

        Assert.Equal((HttpStatusCode.Created, "very low"), (answer.Status, answer.Text("overall")));
        Assert.Contains("a1", Ids(await lab.Read(Findings)));
        Assert.Equal("very low", (await lab.Read($"{Run}/rating")).Text("overall"));
    }

    [Fact]
    public async Task Export_WithChangesUploadedAgain_CountsEachFindingOnce()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        await lab.Post(Findings, Fire);
        var before = Says(await lab.Read(Findings));
        var rating = (await lab.Read($"{Run}/rating")).Json.WithoutInputs();

        var exported = await lab.GetByteArrayAsync($"{Run}/package?format=iso13499", TestContext.Current.CancellationToken);
        await lab.Upload(exported, $"?replaces={PackageClient.Sha256(TestPackages.Whole)}&reason=round%20trip");

        Assert.Equal(before, Says(await lab.Read(Findings)));
        Assert.Equal(rating, (await lab.Read($"{Run}/rating")).Json.WithoutInputs());
        var seen = await Sql.Column(api.Connections.Owner, "SELECT kind || ' ' || severity || ' ' || note FROM analysis.findings WHERE test = 'FO-0002' ORDER BY 1");
        Assert.Equal((before.Count, 1), (seen.Count, seen.Count(finding => finding == "fire severe Flame under the bonnet")));
    }

    [Theory]
    [InlineData("kind", "burst")]
    [InlineData("region", "roof")]
    [InlineData("severity", "grave")]
    [InlineData("position", 7)]
    [InlineData("timeMs", 1e9)]
    public async Task Add_SomethingThatCannotBe_IsRefusedWithTheValueAndNothingStored(string member, object value)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var rows = await LabTables.Rows(api);
        var body = new Dictionary<string, object> { ["kind"] = "fire", ["region"] = "vehicle", ["severity"] = "severe", [member] = value };

        var answer = await lab.Post(Findings, body);

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.Contains(member, answer.Text("detail"), StringComparison.Ordinal);
        Assert.Equal(rows, await LabTables.Rows(api));
    }

    [Theory]
    [InlineData(Role.Reviewer)]
    [InlineData(Role.Analyst)]
    [InlineData(Role.Communications)]
    public async Task Add_RoleThatSignsOrPublishes_IsRefused(Role role)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        using var other = await api.Machine(role);

        Assert.Equal(HttpStatusCode.Forbidden, (await other.Post(Findings, Fire)).Status);
        Assert.Equal(HttpStatusCode.OK, (await other.Read(Findings)).Status);
    }

    [Fact]
    public async Task Changes_OfFindings_AreAuditedWithBeforeAndAfter()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        await lab.Post(Findings, Fire);
        await lab.PutJson($"{Findings}/a1", Corrected("note", 1));

        var entries = await Sql.Column(api.Connections.Owner, "SELECT action || ' ' || coalesce(before::text, '-') || ' ' || after::text FROM lab.audit WHERE entity = 'test/FO-0002/finding/a1' ORDER BY 1");

        Assert.Equal(2, entries.Count);
        Assert.StartsWith("add finding -", entries[0], StringComparison.Ordinal);
        Assert.Contains("Flame under the bonnet", entries[1], StringComparison.Ordinal);
    }

    private static object Corrected(string severity, int version) => new { kind = "fire", region = "vehicle", severity, note = "", version, reason = "looked again" };

    private static async Task<HttpClient> Lab(ApiHost api)
    {
        var lab = await api.Machine(Role.Engineer);
        await lab.Upload(TestPackages.Whole);
        return lab;
    }

    private static bool Agrees(Answer run) => run.Json.GetProperty("crossChecks").EnumerateArray()
        .Single(check => check.GetProperty("check").GetString() == "head-contact.film-only").GetProperty("agrees").GetBoolean();

    private static List<string?> Ids(Answer findings) => [.. findings.Json.EnumerateArray().Select(finding => finding.GetProperty("id").GetString())];

    private static List<string> Says(Answer findings) =>
        [.. findings.Json.EnumerateArray().Select(finding => $"{finding.GetProperty("kind")} {finding.GetProperty("severity")} {finding.GetProperty("timeMs")} {finding.GetProperty("note")}")];

    private static async Task<string> Exported(HttpClient lab, string name)
    {
        var bytes = await lab.GetByteArrayAsync($"{Run}/package?format=iso13499", TestContext.Current.CancellationToken);
        using var zip = new System.IO.Compression.ZipArchive(new MemoryStream(bytes));
        using var reader = new StreamReader(zip.GetEntry(name)!.Open());
        return await reader.ReadToEndAsync(TestContext.Current.CancellationToken);
    }
}
