using System.Net;
using Toepan.Api.Security;
using Toepan.Demo.Packages;
using Toepan.Demo.Scenario;
using Toepan.Support;

namespace Toepan.Api.Tests.Packages.Attachments;

/// <summary>The demo's photographs and film, through the upload as anyone's.</summary>
public sealed class DemoFilesTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Upload_FirstRunOfTheDemo_HasAFilmInTimeAndPhotographs()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        var zip = Zip();
        Assert.Equal(zip, Zip());

        var uploaded = await lab.Upload(zip);

        Assert.DoesNotContain("films.", uploaded.Json.GetProperty("problems").GetRawText(), StringComparison.Ordinal);
        var film = Assert.Single((await lab.Read("/api/v1/tests/FO-0001/films")).Json.EnumerateArray());
        Assert.Equal((1000.0, 20.0, 25.0), (film.GetProperty("framesPerSecond").GetDouble(), film.GetProperty("timeZeroFrame").GetDouble(), film.GetProperty("playbackFramesPerSecond").GetDouble()));
        var photographs = (await lab.Read("/api/v1/tests/FO-0001/attachments")).Json.EnumerateArray()
            .Where(one => one.GetProperty("kind").GetString() == "photograph").Select(one => one.GetProperty("id").GetInt64()).ToList();
        Assert.Equal(2, photographs.Count);
        foreach (var id in photographs)
        {
            Assert.Equal(HttpStatusCode.OK, (await lab.Read($"/api/v1/attachments/{id}/thumbnail")).Status);
        }
    }

    private static byte[] Zip()
    {
        using var zip = new MemoryStream();
        RunZip.Write(zip, NorthmoorProgramme.Runs[0], seed: 1);
        return zip.ToArray();
    }
}
