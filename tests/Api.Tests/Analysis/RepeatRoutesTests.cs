using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using Toepan.Api.Security;
using Toepan.Demo.Packages;
using Toepan.Demo.Scenario;
using Toepan.Domain.Packages;
using Toepan.Support;

namespace Toepan.Api.Tests.Analysis;

/// <summary>Repeats, holds, sensitivity and keystones over HTTP, from packages of the demo programme on real PostgreSQL.</summary>
public sealed class RepeatRoutesTests(PostgresFixture postgres)
{
    private static readonly string[] Uploaded = ["FO-0002", "FO-0011", "FO-0017"];

    [Fact]
    public async Task Routes_OfTwoRunsOfOneVehicle_AnswerWhatTheMeasuresSay()
    {
        await using var api = await ApiHost.Start(postgres);
        using var client = await api.Machine(Role.Engineer, Role.Analyst);
        foreach (var test in Uploaded)
        {
            await Upload(client, test);
        }

        await Repeats_GiveDifferencesAndScores(client);
        await Repeats_OfOtherVehicles_AreRefused(client);
        await Holds_AddUpAndWeighTheCost(client);
        await Sensitivity_AndKeystones_NameTheRunsLevel(client);
        await UnknownRun_IsNotFound(client);
    }

    private static async Task Repeats_GiveDifferencesAndScores(HttpClient client)
    {
        var repeats = await Get(client, "/api/v1/repeats?tests=FO-0011,FO-0017");
        Assert.Equal(["FO-0011", "FO-0017"], repeats.GetProperty("tests").EnumerateArray().Select(test => test.GetProperty("test").GetString()));
        var hic = repeats.GetProperty("measures").EnumerateArray().First(measure => measure.GetProperty("code").GetString() == "head.hic15");
        double[] values = [await Measure(client, "FO-0011", "head.hic15"), await Measure(client, "FO-0017", "head.hic15")];
        Assert.Equal(values, hic.GetProperty("values").EnumerateArray().Select(value => value.GetDouble()));
        Assert.Equal(values[1] - values[0], hic.GetProperty("differences")[1].GetDouble(), 1e-9 * values[0]);
        // n = 2: s = |a − b|/√2, CV = s/mean (standards.md §14).
        Assert.Equal(Math.Abs(values[1] - values[0]) / Math.Sqrt(2) / ((values[0] + values[1]) / 2), hic.GetProperty("cv").GetDouble(), 1e-10);

        var pulse = repeats.GetProperty("signals").EnumerateArray().Single(signal => signal.GetProperty("key").GetString() == "vehicle.pulse");
        double Score(string name) => pulse.GetProperty(name).GetDouble();
        Assert.Equal((0.4 * Score("corridor")) + (0.2 * (Score("phase") + Score("magnitude") + Score("slope"))), Score("overall"), 1e-9);
        Assert.Equal(3, repeats.GetProperty("parts").GetArrayLength());
        Assert.Equal(2, repeats.GetProperty("holds").GetArrayLength());
    }

    private static async Task Repeats_OfOtherVehicles_AreRefused(HttpClient client)
    {
        foreach (var tests in new[] { "FO-0011,FO-0002", "FO-0011", "FO-0011,FO-0011", "" })
        {
            using var answer = await client.GetAsync(new Uri($"/api/v1/repeats?tests={tests}", UriKind.Relative), TestContext.Current.CancellationToken);
            Assert.Equal((HttpStatusCode.BadRequest, "application/problem+json"), (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
        }
    }

    private static async Task Holds_AddUpAndWeighTheCost(HttpClient client)
    {
        var holds = await Get(client, "/api/v1/tests/FO-0002/holds?vehicleCost=25000");
        var overall = (await Get(client, "/api/v1/tests/FO-0002/rating")).GetProperty("overall").GetString();
        Assert.Equal(overall, holds.GetProperty("overall").GetString());
        Assert.Equal(1, holds.GetProperty("levels").EnumerateArray().Sum(level => level.GetProperty("chance").GetProperty("independent").GetDouble()), 1e-9);
        var repeat = holds.GetProperty("repeat");
        var worse = repeat.GetProperty("worse").GetProperty("independent").GetDouble();
        Assert.Equal(worse > 0 ? JsonValueKind.Number : JsonValueKind.Null, repeat.GetProperty("costPerChange").ValueKind);
        using var refused = await client.GetAsync(new Uri("/api/v1/tests/FO-0002/holds?vehicleCost=-1", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
    }

    private static async Task Sensitivity_AndKeystones_NameTheRunsLevel(HttpClient client)
    {
        var overall = (await Get(client, "/api/v1/tests/FO-0002/rating")).GetProperty("overall").GetString();
        var sensitivity = await Get(client, "/api/v1/tests/FO-0002/sensitivity");
        Assert.Equal(overall, sensitivity.GetProperty("overall").GetString());
        Assert.All(sensitivity.GetProperty("rows").EnumerateArray(), row => Assert.True(
            row.GetProperty("toWorse").ValueKind != JsonValueKind.Null || row.GetProperty("toBetter").ValueKind != JsonValueKind.Null));

        var keystones = await Get(client, "/api/v1/tests/FO-0002/keystones");
        Assert.Equal(overall, keystones.GetProperty("overall").GetString());
        var channels = (await Get(client, "/api/v1/tests/FO-0002/channels")).EnumerateArray().Select(channel => channel.GetProperty("code").GetString()![..15]).Distinct();
        Assert.Equal(channels.Count(), keystones.GetProperty("items").EnumerateArray().Count(item => item.GetProperty("kind").GetString() == "channel"));
    }

    private static async Task UnknownRun_IsNotFound(HttpClient client)
    {
        foreach (var path in new[] { "/api/v1/repeats?tests=FO-0011,FO-9999", "/api/v1/tests/FO-9999/holds", "/api/v1/tests/FO-9999/sensitivity", "/api/v1/tests/FO-9999/keystones" })
        {
            using var answer = await client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }
    }

    private static async Task<double> Measure(HttpClient client, string test, string code) =>
        (await Get(client, $"/api/v1/tests/{test}/measures")).EnumerateArray()
        .First(measure => measure.GetProperty("code").GetString() == code && measure.GetProperty("position").GetInt32() == 1).GetProperty("value").GetDouble();

    private static async Task Upload(HttpClient client, string test)
    {
        using var zip = new MemoryStream();
        PackageWriter.Write(zip, PackageBuilder.Build(NorthmoorProgramme.Runs.Single(run => run.Test == test), 1));
        using var body = new ByteArrayContent(zip.ToArray());
        body.Headers.ContentType = new MediaTypeHeaderValue("application/zip");
        using var answer = await client.PostAsync(new Uri("/api/v1/packages", UriKind.Relative), body, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
    }

    private static async Task<JsonElement> Get(HttpClient client, string path)
    {
        using var answer = await client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(answer.IsSuccessStatusCode, $"{path}: {(int)answer.StatusCode} {text}");
        using var document = JsonDocument.Parse(text);
        return document.RootElement.Clone();
    }
}
