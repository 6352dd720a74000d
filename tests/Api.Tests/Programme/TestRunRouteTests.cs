using System.Net;
using Toepan.Api.Security;
using Toepan.Api.Tests.Packages;
using Toepan.Support;

namespace Toepan.Api.Tests.Programme;

/// <summary>Runs, vehicles, classes and the board over a small programme: two valid runs, one not valid, its repeat.</summary>
public sealed class TestRunRouteTests(PostgresFixture postgres)
{
    [Theory]
    [InlineData("", "FO-0002 FO-0003 FO-0005 FO-0006")]
    [InlineData("?valid=false", "FO-0005")]
    [InlineData("?state=not%20valid", "FO-0005")]
    [InlineData("?state=rated&class=delivery-van", "FO-0002 FO-0003 FO-0006")]
    [InlineData("?vehicle=quillon-drayman-2029", "FO-0003")]
    [InlineData("?class=compact-electric", "")]
    [InlineData("?class=%00", "")]
    public async Task List_Filtered_HoldsTheRunsThatPass(string query, string expected)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Programme(api);

        var runs = await lab.Read($"/api/v1/tests{query}");

        Assert.Equal(expected, string.Join(' ', runs.Json.EnumerateArray().Select(run => run.GetProperty("test").GetString())));
    }

    [Fact]
    public async Task Get_RunNotValid_SaysWhichItemAndWhatRepeatsIt()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Programme(api);

        var run = (await lab.Read("/api/v1/tests/FO-0005")).Json;

        var overlap = run.GetProperty("conduct").EnumerateArray().Single(item => item.GetProperty("item").GetString() == "overlap");
        Assert.Equal("outside", overlap.GetProperty("verdict").GetString());
        Assert.Equal(42.3m, overlap.GetProperty("reading").GetDecimal());
        Assert.False(run.GetProperty("valid").GetBoolean());
        Assert.Equal("not valid", run.GetProperty("state").GetString());
        Assert.Equal("FO-0006", run.GetProperty("repeatedBy")[0].GetString());
        Assert.Equal("H3", run.GetProperty("occupants")[0].GetProperty("dummy").GetString());
    }

    [Fact]
    public async Task Vehicle_WithTwin_SharesTheLowestRatingOfItsValidRuns()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Programme(api);
        using var manager = await api.Machine(Role.Manager);
        const string Vehicle = "/api/v1/vehicles/askervold-lade-2032";
        var twin = new { vehicle = "askervold-lade-long-2032", make = "Askervold", model = "Lade Long", evidence = "Body drawing 7 of 2031" };

        var added = await manager.Post($"{Vehicle}/twins", twin);
        var twice = await manager.Post($"{Vehicle}/twins", twin);
        var byEngineer = await lab.Post($"{Vehicle}/twins", twin);

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.Conflict, HttpStatusCode.Forbidden), (added.Status, twice.Status, byEngineer.Status));
        var vehicle = (await lab.Read(Vehicle)).Json;
        Assert.Equal("FO-0006", vehicle.GetProperty("ratedBy").GetString());
        Assert.Equal("Body drawing 7 of 2031", vehicle.GetProperty("twins")[0].GetProperty("evidence").GetString());
        Assert.Equal("askervold-lade-2032", (await lab.Read("/api/v1/vehicles/askervold-lade-long-2032")).Text("sharesRatingOf"));
    }

    [Fact]
    public async Task Board_ForReviewer_AsksToReviewWhatIsRated()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Programme(api);
        using var reviewer = await api.Machine(Role.Reviewer);

        var board = (await reviewer.Read("/api/v1/board")).Json;

        Assert.Equal(["FO-0002", "FO-0003", "FO-0006"], board.GetProperty("needsYou").EnumerateArray().Select(task => task.GetProperty("test").GetString()!).Order());
        var vans = board.GetProperty("classes").EnumerateArray().Single(row => row.GetProperty("class").GetString() == "delivery-van");
        Assert.Equal(3, vans.GetProperty("vehicles").GetArrayLength());
        Assert.All(vans.GetProperty("vehicles").EnumerateArray(), vehicle => Assert.Equal("rated", vehicle.GetProperty("state").GetString()));
    }

    [Fact]
    public async Task AddClass_ByManager_LetsPackagesNameIt()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        using var manager = await api.Machine(Role.Manager);
        var package = TestPackages.WithProgramme(TestPackages.Whole, text => text.Replace("delivery-van", "tow-truck", StringComparison.Ordinal));

        var before = await lab.Upload(package);
        var added = await manager.Post("/api/v1/classes", new { key = "tow-truck", title = "Tow trucks" });
        var after = await lab.Upload(package);

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.Created, HttpStatusCode.Created), (before.Status, added.Status, after.Status));
    }

    private static async Task<HttpClient> Programme(ApiHost api)
    {
        var lab = await api.Machine(Role.Engineer);
        foreach (var number in (int[])[5, 6, 2, 3])
        {
            Assert.Equal(HttpStatusCode.Created, (await lab.Upload(TestPackages.Zip(number))).Status);
        }

        return lab;
    }
}
