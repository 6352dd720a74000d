using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Toepan.Demo.Packages;
using Toepan.Demo.Scenario;
using Toepan.Domain.Packages;

namespace Toepan.Api.Tests.Programme;

/// <summary>What a route answered.</summary>
internal sealed record Reply(HttpStatusCode Status, string Text)
{
    public JsonElement Json => JsonDocument.Parse(Text).RootElement;

    public string Member(string name) => Json.GetProperty(name).ToString();
}

/// <summary>The programme's routes as a script calls them.</summary>
internal static class ProgrammeClient
{
    public static Task<Reply> Read(this HttpClient client, string path) => client.Send(HttpMethod.Get, path, null);

    public static Task<Reply> Post(this HttpClient client, string path, object body) => client.Send(HttpMethod.Post, path, Json(body));

    public static Task<Reply> Put(this HttpClient client, string path, object body) => client.Send(HttpMethod.Put, path, Json(body));

    public static Task<Reply> PostFile(this HttpClient client, string path, byte[] bytes, string type) =>
        client.Send(HttpMethod.Post, path, new ByteArrayContent(bytes) { Headers = { ContentType = new MediaTypeHeaderValue(type) } });

    /// <summary>Uploads a run of the demo programme.</summary>
    public static async Task Bring(this HttpClient client, int number)
    {
        using var zip = new MemoryStream();
        PackageWriter.Write(zip, PackageBuilder.Build(NorthmoorProgramme.Runs.Single(run => run.Number == number), seed: 1));
        Assert.Equal(HttpStatusCode.Created, (await client.PostFile("/api/v1/packages", zip.ToArray(), "application/zip")).Status);
    }

    /// <summary>Replaces the stored package of a run by the one of a seed.</summary>
    public static async Task Replace(this HttpClient client, int number, int seed, string reason)
    {
        using var zip = new MemoryStream();
        PackageWriter.Write(zip, PackageBuilder.Build(NorthmoorProgramme.Runs.Single(run => run.Number == number), seed));
        var stored = (await client.Read($"/api/v1/tests/FO-{number:D4}")).Json.GetProperty("package").GetProperty("sha256").GetString();
        var path = $"/api/v1/packages?replaces={stored}&reason={Uri.EscapeDataString(reason)}";
        Assert.Equal(HttpStatusCode.Created, (await client.PostFile(path, zip.ToArray(), "application/zip")).Status);
    }

    public static Task<Reply> AddVehicle(this HttpClient client, string key, object? more = null) => client.Post("/api/v1/vehicles", more ?? new
    {
        vehicle = key, make = "Velsey", model = "Lade", @class = "delivery-van", kerbMassKg = 1700, salesSharePercent = 25.5,
    });

    private static async Task<Reply> Send(this HttpClient client, HttpMethod method, string path, HttpContent? body)
    {
        using var request = new HttpRequestMessage(method, path) { Content = body };
        using var response = await client.SendAsync(request, TestContext.Current.CancellationToken);
        return new(response.StatusCode, await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    private static StringContent Json(object body) => new(JsonSerializer.Serialize(body), Encoding.UTF8, "application/json");
}
