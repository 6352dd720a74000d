using System.Net;
using System.Text.Json;
using Toepan.Api.Tests.Packages;

namespace Toepan.Api.Tests.Ratings;

/// <summary>The rating and the measures behind it, in the shape the contract gives.</summary>
[Collection(ProgrammeReaders.Name)]
public sealed class RatingRouteTests(SharedProgramme programme)
{
    private static readonly string?[] Words = ["high", "moderate", "low", "very low", null];

    [Fact]
    public async Task Get_RatedRun_HasTheShapeOfTheContract()
    {
        var lab = programme.Lab;

        var rating = (await lab.Read("/api/v1/tests/FO-0002/rating")).Json;

        Assert.Equal("offset-frontal-1", rating.GetProperty("scheme").GetString());
        Assert.True(rating.GetProperty("valid").GetBoolean());
        Assert.Contains(rating.GetProperty("overall").GetString(), Words);
        Assert.Equal(
            ["head", "neck", "chest", "thigh.left", "thigh.right", "lowerleg.left", "lowerleg.right", "structure"],
            rating.GetProperty("regions").EnumerateArray().Select(region => region.GetProperty("region").GetString()));
        Assert.All(rating.GetProperty("regions").EnumerateArray(), region => Assert.Contains(region.GetProperty("level").GetString(), Words));
        Assert.True(rating.GetProperty("regions")[0].GetProperty("margin").TryGetProperty("toBetter", out _));
        Assert.Equal("structure", rating.GetProperty("structure").GetProperty("region").GetString());
        Assert.NotEqual(0, rating.GetProperty("explanation").GetArrayLength());
        Assert.Equal(JsonValueKind.Array, rating.GetProperty("caps").ValueKind);
    }

    [Fact]
    public async Task Get_RunWithCap_ListsTheCapThatFired()
    {
        var lab = programme.Lab;

        var rating = (await lab.Read("/api/v1/tests/FO-0023/rating")).Json;

        Assert.Equal("very low", rating.GetProperty("overall").GetString());
        Assert.Contains(rating.GetProperty("caps").EnumerateArray(), cap => cap.GetProperty("rule").GetString()!.Contains("fire", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Get_RunWithoutAnInput_IsNotRatedAndSaysWhy()
    {
        var lab = programme.Lab;

        var rating = (await lab.Read("/api/v1/tests/FO-0008/rating")).Json;

        Assert.Equal(JsonValueKind.Null, rating.GetProperty("overall").ValueKind);
        Assert.Contains("right thigh", rating.GetProperty("notRated").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Get_UnknownScheme_IsNotFound()
    {
        var lab = programme.Lab;

        Assert.Equal(HttpStatusCode.NotFound, (await lab.Read("/api/v1/tests/FO-0002/rating?scheme=nobody-1")).Status);
        Assert.Equal(HttpStatusCode.OK, (await lab.Read("/api/v1/tests/FO-0002/rating?scheme=offset-frontal-1")).Status);
    }

    [Fact]
    public async Task Measures_OfRun_HaveTheShapeOfTheContract()
    {
        var lab = programme.Lab;

        var measures = (await lab.Read("/api/v1/tests/FO-0002/measures")).Json.EnumerateArray().ToList();
        var structure = (await lab.Read("/api/v1/tests/FO-0002/structure")).Json;

        var hic = measures.Single(measure => measure.GetProperty("code").GetString() == "head.hic15");
        Assert.Equal((1, ""), (hic.GetProperty("position").GetInt32(), hic.GetProperty("unit").GetString()));
        Assert.True(hic.GetProperty("to").GetDouble() > hic.GetProperty("from").GetDouble());
        Assert.Equal(3, hic.GetProperty("sources").GetArrayLength());
        Assert.Equal("1", hic.GetProperty("methodEdition").GetString());
        Assert.All(measures, measure => Assert.True(
            measure.GetProperty("value").ValueKind == JsonValueKind.Null ^ measure.GetProperty("absent").ValueKind == JsonValueKind.Null));
        Assert.Contains(measures, measure => measure.GetProperty("code").GetString() == "vehicle.deltav" && measure.GetProperty("position").ValueKind == JsonValueKind.Null);
        Assert.True(structure.GetProperty("alignment").GetProperty("rmsMm").GetDouble() > 0);
        Assert.NotEqual(0, structure.GetProperty("points").GetArrayLength());
    }
}
