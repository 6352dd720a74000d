using Toepan.Api.Security;
using Toepan.Api.Tests.Packages;

namespace Toepan.Api.Tests.Programme;

/// <summary>Runs and the board.</summary>
[Collection(ProgrammeReaders.Name)]
public sealed class TestRunRouteTests(SharedProgramme programme)
{
    [Theory]
    [InlineData("", "FO-0001 FO-0002 FO-0003 FO-0005 FO-0006 FO-0008 FO-0023")]
    [InlineData("?valid=false", "FO-0005")]
    [InlineData("?state=not%20valid", "FO-0005")]
    [InlineData("?state=rated&class=delivery-van", "FO-0001 FO-0002 FO-0003 FO-0006")]
    [InlineData("?state=run", "FO-0008")]
    [InlineData("?vehicle=quillon-drayman-2029", "FO-0003")]
    [InlineData("?class=compact-electric", "")]
    [InlineData("?class=%00", "")]
    public async Task List_Filtered_HoldsTheRunsThatPass(string query, string expected)
    {
        var lab = programme.Lab;

        var runs = await lab.Read($"/api/v1/tests{query}");

        Assert.Equal(expected, string.Join(' ', runs.Json.EnumerateArray().Select(run => run.GetProperty("test").GetString())));
    }

    [Fact]
    public async Task Get_RunNotValid_SaysWhichItemAndWhatRepeatsIt()
    {
        var lab = programme.Lab;

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
    public async Task Board_ForReviewer_AsksToReviewWhatIsRated()
    {
        using var reviewer = await programme.Api.Machine(Role.Reviewer);

        var board = (await reviewer.Read("/api/v1/board")).Json;

        Assert.Equal(["FO-0001", "FO-0002", "FO-0003", "FO-0006", "FO-0023"], board.GetProperty("needsYou").EnumerateArray().Select(task => task.GetProperty("test").GetString()!).Order());
        var vans = board.GetProperty("classes").EnumerateArray().Single(row => row.GetProperty("class").GetString() == "delivery-van");
        Assert.Equal(
            ["askervold-lade-2032 rated", "quillon-drayman-2029 rated", "tarnbrook-voyle-2031 rated", "velsey-porter-2030 run"],
            vans.GetProperty("vehicles").EnumerateArray().Select(vehicle => $"{vehicle.GetProperty("vehicle")} {vehicle.GetProperty("state")}"));
    }
}
