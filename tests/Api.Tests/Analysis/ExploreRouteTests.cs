using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Toepan.Api.Security;
using Toepan.Api.Tests.Packages;

namespace Toepan.Api.Tests.Analysis;

[Collection(ProgrammeReaders.Name)]
public sealed class ExploreRouteTests(SharedProgramme programme)
{
    private const string Explore = "/api/v1/explore";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Scatter_ValidRuns_GivesTheStoredFiguresAndTheirLine()
    {
        var answer = (await programme.Lab.Read($"{Explore}?x=structure.footwell.rearward&y=tibia.right.upper.index")).Json;

        var points = answer.GetProperty("points").EnumerateArray().ToList();
        Assert.Equal(6, points.Count);
        foreach (var point in points)
        {
            var test = point.GetProperty("test").GetString()!;
            var measures = (await programme.Lab.Read($"/api/v1/tests/{test}/measures")).Json.EnumerateArray().ToList();
            double Stored(string code) => measures.First(measure => measure.GetProperty("code").GetString() == code).GetProperty("value").GetDouble();
            Assert.Equal(Stored("structure.footwell.rearward"), point.GetProperty("x").GetDouble());
            Assert.Equal(Stored("tibia.right.upper.index"), point.GetProperty("y").GetDouble());
        }

        // Closed form: the least-squares line passes through the means.
        var (x, y) = (points.Average(point => point.GetProperty("x").GetDouble()), points.Average(point => point.GetProperty("y").GetDouble()));
        var line = answer.GetProperty("relation").GetProperty("line");
        Assert.Equal(y, line.GetProperty("intercept").GetDouble() + (line.GetProperty("slope").GetDouble() * x), 1e-9);
        Assert.Contains("Of 6 runs", answer.GetProperty("sentence").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("&view=distribution", "FO-0001 FO-0002 FO-0003 FO-0006 FO-0008 FO-0023")]
    [InlineData("&view=distribution&class=delivery-van", "FO-0001 FO-0002 FO-0003 FO-0006 FO-0008")]
    [InlineData("&view=distribution&runs=all&class=delivery-van", "FO-0001 FO-0002 FO-0003 FO-0005 FO-0006 FO-0008")]
    [InlineData("&view=distribution&runs=rating&class=delivery-van&massFrom=1700", "FO-0003 FO-0006")]
    [InlineData("&view=groups&seat=all&class=delivery-van&yearTo=2029", "FO-0002 FO-0003 FO-0008")]
    public async Task Ask_Choices_TakeTheRunsThatFit(string query, string expected)
    {
        var answer = (await programme.Lab.Read($"{Explore}?x=chest.deflection{query}")).Json;

        Assert.Equal(expected, string.Join(' ', answer.GetProperty("points").EnumerateArray().Select(point => point.GetProperty("test").GetString()).Distinct()));
    }

    [Fact]
    public async Task Ranked_Values_ComeGreatestFirst()
    {
        var answer = (await programme.Lab.Read($"{Explore}?x=head.hic15&view=ranked")).Json;

        var values = answer.GetProperty("points").EnumerateArray().Select(point => point.GetProperty("x").GetDouble()).ToList();
        Assert.Equal(values.OrderDescending(), values);
        Assert.Contains("no ranking", answer.GetProperty("sentence").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_Csv_HoldsALineARunWithUnits()
    {
        using var lab = await programme.Accepting("text/csv");

        var lines = (await lab.Read($"{Explore}?x=chest.deflection&class=delivery-van")).Json.GetString()!.TrimEnd().Split("\r\n");

        Assert.Equal("test,vehicle,title,class,modelYear,massKg,group,summary,chest.deflection [mm]", lines[0]);
        Assert.Equal(6, lines.Length);
    }

    [Theory]
    [InlineData("", HttpStatusCode.BadRequest)]
    [InlineData("?x=no.such", HttpStatusCode.BadRequest)]
    [InlineData("?x=structure.<point>.rearward", HttpStatusCode.BadRequest)]
    [InlineData("?x=head.hic15&view=scatter", HttpStatusCode.BadRequest)]
    [InlineData("?x=head.hic15&view=pie", HttpStatusCode.BadRequest)]
    [InlineData("?x=head.hic15&yearFrom=abc", HttpStatusCode.BadRequest)]
    [InlineData("?x=head.hic15&massFrom=2000&massTo=1000", HttpStatusCode.BadRequest)]
    [InlineData("?x=head.hic15&class=no-such", HttpStatusCode.NotFound)]
    public async Task Ask_BadQuestion_IsRefused(string query, HttpStatusCode expected) =>
        Assert.Equal(expected, (await programme.Lab.Read(Explore + query)).Status);

    [Fact]
    public async Task Questions_SavedByOne_AreReadByAllAndRemovedByTheirOwner()
    {
        using var one = await programme.Api.Machine(Role.Analyst);
        using var other = await programme.Api.Machine(Role.Reviewer);
        var body = new { name = "Footwell and legs", address = "/explore?x=structure.footwell.rearward&y=tibia.right.upper.index" };

        var created = await one.PostAsJsonAsync("/api/v1/questions", body, Cancel);
        Assert.Equal(HttpStatusCode.Created, created.StatusCode);
        var id = (await created.Content.ReadFromJsonAsync<JsonElement>(Cancel)).GetProperty("id").GetInt64();
        Assert.Equal(HttpStatusCode.Conflict, (await other.PostAsJsonAsync("/api/v1/questions", body, Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await other.PostAsJsonAsync("/api/v1/questions", new { name = "Away", address = "https://example.org/" }, Cancel)).StatusCode);
        Assert.Contains((await other.Read("/api/v1/questions")).Json.EnumerateArray(), question => question.GetProperty("id").GetInt64() == id);
        Assert.Equal(HttpStatusCode.Forbidden, (await other.DeleteAsync($"/api/v1/questions/{id}", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await one.DeleteAsync($"/api/v1/questions/{id}", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await one.DeleteAsync($"/api/v1/questions/{id}", Cancel)).StatusCode);
    }
}
