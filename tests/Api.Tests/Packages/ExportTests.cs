using System.Net;
using System.Text.Json;
using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Packages;

/// <summary>A run written anew as ISO/TS 13499 says the same as the package it came in.</summary>
public sealed class ExportTests(PostgresFixture postgres)
{
    [Theory]
    [InlineData(1)]
    [InlineData(10)]
    [InlineData(19)]
    [InlineData(27)]
    public async Task Export_UploadedAgain_GivesIdenticalMeasures(int number)
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        var test = $"FO-{number:D4}";
        var original = TestPackages.Repacked(TestPackages.Zip(number));
        await lab.Upload(original);
        var before = await Results(lab, test);

        var exported = await lab.GetByteArrayAsync($"/api/v1/tests/{test}/package?format=iso13499", TestContext.Current.CancellationToken);
        var answer = await lab.Upload(exported, $"?replaces={PackageClient.Sha256(original)}&reason=round%20trip");

        Assert.Equal(HttpStatusCode.Created, answer.Status);
        Assert.Equal(before, await Results(lab, test));
    }

    [Fact]
    public async Task Export_WithAttachments_CarriesThem()
    {
        await using var api = await ApiHost.Start(postgres);
        using var lab = await api.Machine(Role.Engineer);
        var photo = "not really a photograph"u8.ToArray();
        await lab.Upload(TestPackages.Repacked(TestZip.With(TestPackages.Whole, "Photo/side.jpg", photo)));

        var exported = await lab.GetByteArrayAsync("/api/v1/tests/FO-0002/package?format=iso13499", TestContext.Current.CancellationToken);

        using var zip = new System.IO.Compression.ZipArchive(new MemoryStream(exported));
        using var entry = zip.Entries.Single(candidate => candidate.FullName.EndsWith("Photo/side.jpg", StringComparison.Ordinal)).Open();
        using var bytes = new MemoryStream();
        await entry.CopyToAsync(bytes, TestContext.Current.CancellationToken);
        Assert.Equal(photo, bytes.ToArray());
    }

    private static async Task<string> Results(HttpClient lab, string test)
    {
        string[] parts = ["measures", "structure", "findings"];
        var answers = new List<JsonElement>();
        foreach (var part in parts)
        {
            answers.Add((await lab.Read($"/api/v1/tests/{test}/{part}")).Json);
        }

        return JsonSerializer.Serialize(answers) + (await lab.Read($"/api/v1/tests/{test}/rating")).Json.WithoutInputs();
    }
}
