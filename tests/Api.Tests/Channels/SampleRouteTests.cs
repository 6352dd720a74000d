using System.Globalization;
using System.Net;
using Toepan.Api.Tests.Packages;

namespace Toepan.Api.Tests.Channels;

/// <summary>Samples by the contract: JSON or CSV by Accept, filtered, cut, reduced.</summary>
[Collection(ProgrammeReaders.Name)]
public sealed class SampleRouteTests(SharedProgramme programme)
{
    private const string Head = "/api/v1/tests/FO-0002/channels/11HEAD0000H3ACXP";

    [Fact]
    public async Task Samples_Json_HoldsEverySampleFromTheFirst()
    {
        var lab = programme.Lab;

        var answer = await lab.Read($"{Head}?cfc=1000");

        Assert.Equal((HttpStatusCode.OK, "application/json"), (answer.Status, answer.MediaType));
        Assert.Equal(("11HEAD0000H3ACXP", "g", "1000"), (answer.Text("code"), answer.Text("unit"), answer.Text("cfc")));
        Assert.Equal(answer.Json.GetProperty("count").GetInt32(), answer.Json.GetProperty("values").GetArrayLength());
        Assert.Equal(answer.Text("start"), answer.Text("from"));
        Assert.Equal("-0.05", answer.Json.GetProperty("biasRemoved").GetProperty("from").ToString());
    }

    [Fact]
    public async Task Samples_FromAndTo_AreInclusiveBounds()
    {
        var lab = programme.Lab;

        var answer = await lab.Read($"{Head}?from=0.01&to=0.02");

        Assert.Equal((0.01, 0.02), (answer.Json.GetProperty("from").GetDouble(), answer.Json.GetProperty("to").GetDouble()));
        Assert.Equal(101, answer.Json.GetProperty("count").GetInt32());
    }

    [Fact]
    public async Task Samples_Points_KeepTheExtremes()
    {
        var lab = programme.Lab;
        var all = (await lab.Read($"{Head}?cfc=1000")).Json.GetProperty("values").EnumerateArray().Select(value => value.GetDouble()).ToList();

        var answer = await lab.Read($"{Head}?cfc=1000&points=100");

        var few = answer.Json.GetProperty("values").EnumerateArray().Select(value => value.GetDouble()).ToList();
        var times = answer.Json.GetProperty("times").EnumerateArray().Select(value => value.GetDouble()).ToList();
        Assert.InRange(few.Count, 50, 100);
        Assert.Equal((all.Min(), all.Max()), (few.Min(), few.Max()));
        Assert.Equal(times.Order(), times);
        Assert.Equal(few.Count, times.Count);
    }

    [Fact]
    public async Task Samples_Csv_HoldsTheSameNumbersAsJson()
    {
        var lab = programme.Lab;
        var json = await lab.Read($"{Head}?from=0&to=0.05");
        using var table = await programme.Accepting("text/csv");

        var csv = await table.Read($"{Head}?from=0&to=0.05");

        var lines = csv.Json.GetString()!.TrimEnd('\n').Split('\n');
        Assert.Equal("text/csv", csv.MediaType);
        Assert.Equal("time [s],11HEAD0000H3ACXP [g]", lines[0]);
        Assert.Equal(
            json.Json.GetProperty("values").EnumerateArray().Select(value => value.GetDouble()),
            lines.Skip(1).Select(line => double.Parse(line.Split(',')[1], CultureInfo.InvariantCulture)));
        Assert.Equal("0.0003", lines[4].Split(',')[0]);
    }

    [Theory]
    [InlineData("text/csv;q=0.5, application/json", "application/json")]
    [InlineData("application/json;q=0.1, text/*", "text/csv")]
    [InlineData("*/*", "application/json")]
    [InlineData("application/xml", "application/problem+json")]
    public async Task Samples_Accept_DecidesTheForm(string accept, string expected)
    {
        using var lab = await programme.Accepting(accept);

        Assert.Equal(expected, (await lab.Read($"{Head}?to=0")).MediaType);
    }

    [Theory]
    [InlineData("cfc=77", "77", "60, 180, 600, 1000")]
    [InlineData("cfc=many", "many", "")]
    [InlineData("points=0", "0", "10 to 100000")]
    [InlineData("points=100001", "100001", "10 to 100000")]
    [InlineData("from=0.2&to=0.1", "0.2", "0.1")]
    [InlineData("from=NaN", "NaN", "finite")]
    public async Task Samples_BadQuery_NamesValueAndLimits(string query, string value, string limits)
    {
        var lab = programme.Lab;

        var answer = await lab.Read($"{Head}?{query}");

        Assert.Equal((HttpStatusCode.BadRequest, "application/problem+json"), (answer.Status, answer.MediaType));
        Assert.Contains(value, answer.Text("detail"), StringComparison.Ordinal);
        Assert.Contains(limits, answer.Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Samples_DeadChannel_CanBeSeenButNotFiltered()
    {
        var lab = programme.Lab;

        var raw = await lab.Read("/api/v1/tests/FO-0008/channels/11FEMRRI00H3FOZP");
        var filtered = await lab.Read("/api/v1/tests/FO-0008/channels/11FEMRRI00H3FOZP?cfc=600");

        Assert.Equal(HttpStatusCode.OK, raw.Status);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, filtered.Status);
        Assert.Contains("flat", filtered.Text("detail"), StringComparison.Ordinal);
    }
}
