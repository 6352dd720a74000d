using System.Net;
using Toepan.Api.Security;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Packages;

/// <summary>What the upload route answers and keeps. Expected answers: design, HTTP contract and settled readings "Contract".</summary>
public sealed class UploadTests(PostgresFixture postgres)
{
    private const string Test = "FO-0002";

    [Fact]
    public async Task Upload_NewPackage_StoresEverythingAndAnswersCreated()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);

        var answer = await lab.Upload(TestPackages.Whole);

        Assert.Equal(HttpStatusCode.Created, answer.Status);
        Assert.Equal(Test, answer.Text("test"));
        Assert.Equal("True", answer.Text("created"));
        Assert.Equal("True", answer.Text("valid"));
        Assert.Equal(PackageClient.Sha256(TestPackages.Whole), answer.Text("sha256"));
        Assert.Contains(answer.Text("overall"), (string[])["high", "moderate", "low", "very low"]);
        Assert.Equal(
            "1 package, 1 run, 1 vehicle, 1 reduction, 1 rating, 1 pointer, 1 audit entry",
            await Sql.Scalar(api.Connections.Owner, """
                SELECT (SELECT count(*) FROM lab.package) || ' package, ' || (SELECT count(*) FROM lab.test_run) || ' run, '
                    || (SELECT count(*) FROM lab.vehicle) || ' vehicle, ' || (SELECT count(*) FROM lab.reduction) || ' reduction, '
                    || (SELECT count(*) FROM lab.rating) || ' rating, ' || (SELECT count(*) FROM lab.current_rating) || ' pointer, '
                    || (SELECT count(*) FROM lab.audit WHERE action = 'upload') || ' audit entry'
                """));
    }

    [Fact]
    public async Task Upload_NewPackage_IsKeptByteForByte()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        await lab.Upload(TestPackages.Whole);

        var kept = await lab.GetByteArrayAsync($"/api/v1/tests/{Test}/package", TestContext.Current.CancellationToken);

        Assert.Equal(TestPackages.Whole, kept);
    }

    [Fact]
    public async Task Upload_PackageOverOneChunk_IsKeptByteForByte()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        var film = new byte[(2 << 20) + 12_345];
        new Random(7).NextBytes(film);
        var large = TestZip.With(TestPackages.Whole, "Movie/front.bin", film);
        Assert.Equal(HttpStatusCode.Created, (await lab.Upload(large)).Status);

        var kept = await lab.GetByteArrayAsync($"/api/v1/tests/{Test}/package", TestContext.Current.CancellationToken);

        Assert.Equal(large, kept);
    }

    [Fact]
    public async Task Upload_SameBytesAgain_AnswersOkAndStoresNothing()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        var first = await lab.Upload(TestPackages.Whole);
        var before = await LabTables.Rows(api);

        var again = await lab.Upload(TestPackages.Whole);

        Assert.Equal(HttpStatusCode.OK, again.Status);
        Assert.Equal("False", again.Text("created"));
        Assert.Equal(first.Text("overall"), again.Text("overall"));
        Assert.Equal(first.Json.GetProperty("problems").GetArrayLength(), again.Json.GetProperty("problems").GetArrayLength());
        Assert.Equal(before, await LabTables.Rows(api));
    }

    [Fact]
    public async Task Upload_OtherZipOfSameContent_ConflictsAndSaysSo()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        await lab.Upload(TestPackages.Whole);
        var before = await LabTables.Rows(api);

        var answer = await lab.Upload(TestPackages.Repacked(TestPackages.Whole));

        Assert.Equal((HttpStatusCode.Conflict, "application/problem+json"), (answer.Status, answer.MediaType));
        Assert.Equal("True", answer.Text("sameContent"));
        Assert.Equal(before, await LabTables.Rows(api));
    }

    [Fact]
    public async Task Upload_OtherContentOfKnownTest_Conflicts()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        await lab.Upload(TestPackages.Whole);

        var answer = await lab.Upload(TestPackages.Reworded(TestPackages.Whole));

        Assert.Equal(HttpStatusCode.Conflict, answer.Status);
        Assert.Equal("False", answer.Text("sameContent"));
        Assert.Equal(PackageClient.Sha256(TestPackages.Whole), answer.Text("currentSha256"));
    }

    [Fact]
    public async Task Upload_ReplacingWithReason_MakesTheNewOneCurrentAndKeepsTheOld()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        await lab.Upload(TestPackages.Whole);
        var replacement = TestPackages.Reworded(TestPackages.Whole);

        var answer = await lab.Upload(replacement, $"?replaces={PackageClient.Sha256(TestPackages.Whole)}&reason=wrong%20hall");

        Assert.Equal(HttpStatusCode.Created, answer.Status);
        var run = await lab.Read($"/api/v1/tests/{Test}");
        Assert.Equal("Hall 3", run.Text("laboratory"));
        Assert.Equal("wrong hall", run.Json.GetProperty("history")[0].GetProperty("why").GetString());
        Assert.Equal(2L, await Sql.Scalar(api.Connections.Owner, "SELECT count(*) FROM lab.package"));
        Assert.Equal(2L, await Sql.Scalar(api.Connections.Owner, "SELECT count(*) FROM lab.reduction"));
        Assert.Equal(replacement, await lab.GetByteArrayAsync($"/api/v1/tests/{Test}/package", TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Upload_ReplacedAndReplacedBack_MakesTheFirstCurrentAgain()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        var second = TestPackages.Reworded(TestPackages.Whole);
        await lab.Upload(TestPackages.Whole);
        await lab.Upload(second, $"?replaces={PackageClient.Sha256(TestPackages.Whole)}&reason=there");

        var answer = await lab.Upload(TestPackages.Whole, $"?replaces={PackageClient.Sha256(second)}&reason=and%20back");

        Assert.Equal(HttpStatusCode.Created, answer.Status);
        Assert.Equal("Hall 2", (await lab.Read($"/api/v1/tests/{Test}")).Text("laboratory"));
        Assert.Equal(3, (await lab.Read($"/api/v1/tests/{Test}/reductions")).Json.GetArrayLength());
    }

    [Theory]
    [InlineData("?replaces=0000000000000000000000000000000000000000000000000000000000000000&reason=guess", HttpStatusCode.Conflict)]
    [InlineData("?replaces=0000000000000000000000000000000000000000000000000000000000000000", HttpStatusCode.BadRequest)]
    [InlineData("?dryRun=perhaps", HttpStatusCode.BadRequest)]
    public async Task Upload_ReplacingWrongly_IsRefused(string query, HttpStatusCode expected)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        await lab.Upload(TestPackages.Whole);

        var answer = await lab.Upload(TestPackages.Reworded(TestPackages.Whole), query);

        Assert.Equal((expected, "application/problem+json"), (answer.Status, answer.MediaType));
    }

    [Fact]
    public async Task Upload_DryRun_AnswersWhatWouldBeAndStoresNothing()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        var before = await LabTables.Rows(api);

        var answer = await lab.Upload(TestPackages.Whole, "?dryRun=true");

        Assert.Equal(HttpStatusCode.OK, answer.Status);
        Assert.Equal("True", answer.Text("dryRun"));
        Assert.NotEqual("", answer.Text("overall"));
        Assert.Equal(before, await LabTables.Rows(api));
        Assert.Equal(HttpStatusCode.NotFound, (await lab.Read($"/api/v1/tests/{Test}")).Status);
    }

    [Fact]
    public async Task Upload_RepeatOfUnknownRun_IsKeptWithAWarning()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);

        var answer = await lab.Upload(TestPackages.Zip(6));

        Assert.Equal(HttpStatusCode.Created, answer.Status);
        Assert.Contains(answer.Json.GetProperty("problems").EnumerateArray(), problem =>
            problem.GetProperty("code").GetString() == "programme.repeat-of-unknown" && problem.GetProperty("severity").GetString() == "warning");
    }
}
