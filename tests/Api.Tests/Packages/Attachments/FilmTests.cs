using System.Net;
using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Packages.Attachments;

/// <summary>Frame rate and time zero of films, by the package and by the page.</summary>
public sealed class FilmTests(PostgresFixture postgres)
{
    private const string Films = "/api/v1/tests/FO-0002/films";
    private static readonly byte[] Film = [0x1A, 0x45, 0xDF, 0xA3, 0x87, 0x42, 0x82, 0x84, .. "webm"u8, 0];

    [Fact]
    public async Task Films_SidecarOfThePackage_GivesRateAndZero()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        var sidecar = "file,camera,frames_per_second,time_zero_frame\nleft.webm,onboard-left,1000,25\nlost.webm,roof,500,1\n"u8.ToArray();
        var answer = await lab.Upload(TestZip.With(TestZip.With(TestPackages.Whole, "Movie/left.webm", Film), "Movie/films.csv", sidecar));

        var film = Assert.Single((await lab.Read(Films)).Json.EnumerateArray());

        Assert.Contains("films.unknown-file", answer.Json.GetProperty("problems").EnumerateArray().Select(problem => problem.GetProperty("code").GetString()));
        Assert.Equal((1000.0, 25.0, "onboard-left"), (film.GetProperty("framesPerSecond").GetDouble(), film.GetProperty("timeZeroFrame").GetDouble(), film.GetProperty("camera").GetString()));
        Assert.DoesNotContain("films.csv", (await lab.Read("/api/v1/tests/FO-0002/attachments")).Json.GetRawText(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task SetTimes_OnThePage_CountsOverThePackagesAndIsKeptWithWho()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        await lab.Upload(TestZip.With(TestZip.With(TestPackages.Whole, "Movie/left.webm", Film), "Movie/films.csv", "file,frames_per_second,time_zero_frame\nleft.webm,1000,25\n"u8.ToArray()));
        var id = (await lab.Read(Films)).Json[0].GetProperty("attachment").GetProperty("id").GetInt64();
        var times = new { framesPerSecond = 2000.0, timeZeroFrame = 12.0, playbackFramesPerSecond = 25.0, version = 0 };

        var set = await lab.PutJson($"/api/v1/attachments/{id}/film-times", times);
        var again = await lab.PutJson($"/api/v1/attachments/{id}/film-times", times);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Conflict), (set.Status, again.Status));
        var film = (await lab.Read(Films)).Json[0];
        Assert.Equal((2000.0, 12.0, 25.0, 1), (film.GetProperty("framesPerSecond").GetDouble(), film.GetProperty("timeZeroFrame").GetDouble(), film.GetProperty("playbackFramesPerSecond").GetDouble(), film.GetProperty("version").GetInt32()));
        Assert.StartsWith("test", film.GetProperty("setBy").GetString(), StringComparison.Ordinal);
        Assert.Equal("1", (await Store.Sql.Scalar(api.Connections.Owner, "SELECT count(*)::text FROM lab.audit WHERE action = 'set film times'"))!.ToString());
    }

    [Theory]
    [InlineData(0, 5, "framesPerSecond")]
    [InlineData(-1000, 5, "framesPerSecond")]
    [InlineData(1000, 1e12, "timeZeroFrame")]
    public async Task SetTimes_OutsideAllReason_IsRefused(double rate, double zero, string member)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        await lab.Upload(TestZip.With(TestPackages.Whole, "Movie/left.webm", Film));
        var id = (await lab.Read(Films)).Json[0].GetProperty("attachment").GetProperty("id").GetInt64();

        var answer = await lab.PutJson($"/api/v1/attachments/{id}/film-times", new { framesPerSecond = rate, timeZeroFrame = zero, version = 0 });

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.Contains(member, answer.Text("detail"), StringComparison.Ordinal);
    }
}
