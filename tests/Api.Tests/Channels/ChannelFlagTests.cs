using System.Net;
using System.Text.Json;
using Toepan.Api.Security;
using Toepan.Api.Tests.Packages;
using Toepan.Support;

namespace Toepan.Api.Tests.Channels;

/// <summary>An engineer's decision makes a new reduction; what was before stays.</summary>
public sealed class ChannelFlagTests(PostgresFixture postgres)
{
    private const string Run = "/api/v1/tests/FO-0002";
    private const string HeadX = "11HEAD0000H3ACXP";

    [Fact]
    public async Task Add_Unfit_MakesMeasuresAbsentAndKeepsTheEarlierReduction()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var before = Value(await lab.Read($"{Run}/measures"), "head.hic15");
        var first = (await lab.Read($"{Run}/reductions")).Json[0].GetProperty("id").GetInt64();

        var answer = await lab.Post($"{Run}/flags", new { channel = HeadX, kind = "unfit", reason = "cable torn at the block" });

        Assert.Equal(HttpStatusCode.Created, answer.Status);
        var now = Measure(await lab.Read($"{Run}/measures"), "head.hic15");
        Assert.Equal(JsonValueKind.Null, now.GetProperty("value").ValueKind);
        Assert.Contains("cable torn", now.GetProperty("absent").GetString(), StringComparison.Ordinal);
        Assert.Equal(before, Value(await lab.Read($"{Run}/measures?reduction={first}"), "head.hic15"));
        Assert.Equal(JsonValueKind.Null, (await lab.Read($"{Run}/rating")).Json.GetProperty("overall").ValueKind);
        Assert.Equal(TestPackages.Whole, await lab.GetByteArrayAsync($"{Run}/package", TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Add_Polarity_TurnsTheSamplesRound()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var before = await Samples(lab);

        await lab.Post($"{Run}/flags", new { channel = HeadX, kind = "polarity", reason = "mounted the wrong way round" });

        Assert.Equal(before.Select(value => -value), await Samples(lab));
    }

    [Fact]
    public async Task Add_Scale_MultipliesTheSamples()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var before = await Samples(lab);

        await lab.Post($"{Run}/flags", new { channel = HeadX, kind = "scale", factor = 2.0, reason = "sensitivity of another transducer" });

        Assert.All(before.Zip(await Samples(lab)), pair => Assert.Equal(2 * pair.First, pair.Second, 1e-12 * Math.Abs(pair.First)));
    }

    [Fact]
    public async Task Withdraw_StandingFlag_GivesTheFirstNumbersAgainAndSaysWho()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await Lab(api);
        var before = (await lab.Read($"{Run}/measures")).Json.GetRawText();
        var flag = (await lab.Post($"{Run}/flags", new { channel = HeadX, kind = "unfit", from = 0.05, reason = "loose" })).Json.GetProperty("flag").GetProperty("id");

        var answer = await lab.Post($"{Run}/flags/{flag}/withdrawal", new { reason = "it was the next channel" });

        Assert.Equal(HttpStatusCode.OK, answer.Status);
        Assert.Equal(before, (await lab.Read($"{Run}/measures")).Json.GetRawText());
        var kept = (await lab.Read($"{Run}/flags")).Json[0];
        Assert.False(kept.GetProperty("standing").GetBoolean());
        Assert.Equal("it was the next channel", kept.GetProperty("withdrawnReason").GetString());
        var history = (await lab.Read(Run)).Json.GetProperty("history");
        Assert.Equal(["Withdrew flag " + flag, $"Flagged {HeadX} unfit from 0.05 s on", "Uploaded the package"], history.EnumerateArray().Select(entry => entry.GetProperty("what").GetString()));
        Assert.All(history.EnumerateArray(), entry => Assert.NotEqual("", entry.GetProperty("who").GetString()));
        Assert.Equal(HttpStatusCode.Conflict, (await lab.Post($"{Run}/flags/{flag}/withdrawal", new { reason = "again" })).Status);
    }

    private static async Task<HttpClient> Lab(ApiHost api)
    {
        var lab = await api.Machine(Role.Engineer);
        await lab.Upload(TestPackages.Whole);
        return lab;
    }

    private static async Task<List<double>> Samples(HttpClient lab) =>
        [.. (await lab.Read($"{Run}/channels/{HeadX}?from=0&to=0.1")).Json.GetProperty("values").EnumerateArray().Select(value => value.GetDouble())];

    private static JsonElement Measure(Answer measures, string code) =>
        measures.Json.EnumerateArray().First(measure => measure.GetProperty("code").GetString() == code);

    private static double Value(Answer measures, string code) => Measure(measures, code).GetProperty("value").GetDouble();
}
