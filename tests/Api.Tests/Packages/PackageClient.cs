using System.Net;
using System.Net.Http.Headers;
using System.Security.Cryptography;
using System.Text.Json;

namespace Toepan.Api.Tests.Packages;

/// <summary>Calls of the contract as a laboratory's script makes them.</summary>
internal static class PackageClient
{
    public static async Task<Answer> Upload(this HttpClient client, byte[] zip, string query = "")
    {
        using var body = new ByteArrayContent(zip);
        body.Headers.ContentType = new MediaTypeHeaderValue("application/zip");
        using var response = await client.PostAsync($"/api/v1/packages{query}", body, TestContext.Current.CancellationToken);
        return await Answer.Of(response);
    }

    public static async Task<Answer> Read(this HttpClient client, string path)
    {
        using var response = await client.GetAsync(path, TestContext.Current.CancellationToken);
        return await Answer.Of(response);
    }

    public static async Task<Answer> Post(this HttpClient client, string path, object body)
    {
        using var content = JsonContent(body);
        using var response = await client.PostAsync(path, content, TestContext.Current.CancellationToken);
        return await Answer.Of(response);
    }

    public static async Task<Answer> PutJson(this HttpClient client, string path, object body)
    {
        using var content = JsonContent(body);
        using var response = await client.PutAsync(path, content, TestContext.Current.CancellationToken);
        return await Answer.Of(response);
    }

    public static string Sha256(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static StringContent JsonContent(object body) =>
        new(JsonSerializer.Serialize(body), System.Text.Encoding.UTF8, "application/json");
}

/// <summary>Status, media type and JSON of an answer.</summary>
internal sealed record Answer(HttpStatusCode Status, string? MediaType, JsonElement Json)
{
    public static async Task<Answer> Of(HttpResponseMessage response)
    {
        var text = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        return new(response.StatusCode, response.Content.Headers.ContentType?.MediaType, Parse(text));
    }

    /// <summary>A member of the answer as text, "null" included.</summary>
    public string Text(string member) => Json.GetProperty(member).ToString();

    private static JsonElement Parse(string text)
    {
        try
        {
            return JsonDocument.Parse(text).RootElement;
        }
        catch (JsonException)
        {
            return JsonSerializer.SerializeToElement(text);
        }
    }
}
