using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;

namespace Toepan.Api.Tests.Ratings;

/// <summary>Schemes over HTTP, and documents for tests.</summary>
internal static class SchemeClient
{
    /// <summary>The carried scheme with another key, title and, where wanted, other rules.</summary>
    public static string Document(string key = "offset-frontal-2", params (string From, string To)[] changes)
    {
        var edition = key[(key.LastIndexOf('-') + 1)..];
        var text = File.ReadAllText(Path.Combine(Root(), "src", "Domain", "Ratings", "Data", "offset-frontal-1.json"))
            .Replace("\"key\": \"offset-frontal-1\"", $"\"key\": \"{key}\"", StringComparison.Ordinal)
            .Replace("\"edition\": 1,", $"\"edition\": {edition},", StringComparison.Ordinal);
        foreach (var (from, to) in changes)
        {
            Assert.Contains(from, text, StringComparison.Ordinal);
            text = text.Replace(from, to, StringComparison.Ordinal);
        }

        return text;
    }

    /// <summary>Bounds so strict that most runs fall.</summary>
    public static string Strict(string key = "offset-frontal-2") => Document(
        key, ("\"high\": 0.05, \"moderate\": 0.15, \"low\": 0.35", "\"high\": 0.001, \"moderate\": 0.002, \"low\": 0.003"));

    public static string Independent() => File.ReadAllText(Path.Combine(Root(), "tests", "reference", "schemes", "trunk-and-limbs-1.yaml"));

    public static async Task<(HttpStatusCode Status, JsonElement Json)> Bring(this HttpClient client, string document, bool yaml = false, bool dryRun = false)
    {
        using var body = new StringContent(document, Encoding.UTF8);
        body.Headers.ContentType = new MediaTypeHeaderValue(yaml ? "application/yaml" : "application/json");
        return await Answer(await client.PostAsync(new Uri($"/api/v1/schemes?dryRun={(dryRun ? "true" : "false")}", UriKind.Relative), body));
    }

    public static async Task<(HttpStatusCode Status, JsonElement Json)> Act(this HttpClient client, string path, object? body = null) =>
        await Answer(await client.PostAsJsonAsync(new Uri(path, UriKind.Relative), body ?? new { }));

    /// <summary>Waits until a recomputation is in a state.</summary>
    public static async Task<JsonElement> WaitFor(this HttpClient client, long id, string state)
    {
        for (var tries = 0; tries < 600; tries++)
        {
            var (_, json) = await Answer(await client.GetAsync(new Uri($"/api/v1/recomputations/{id}", UriKind.Relative)));
            if (json.GetProperty("summary").GetProperty("state").GetString() == state)
            {
                return json;
            }

            await Task.Delay(100, TestContext.Current.CancellationToken);
        }

        throw new TimeoutException($"Recomputation {id} did not become {state}.");
    }

    private static async Task<(HttpStatusCode Status, JsonElement Json)> Answer(HttpResponseMessage answer)
    {
        using (answer)
        {
            var text = await answer.Content.ReadAsStringAsync();
            return (answer.StatusCode, text.Length == 0 ? default : JsonDocument.Parse(text).RootElement.Clone());
        }
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Program.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
