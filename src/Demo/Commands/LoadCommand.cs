using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Toepan.Demo.Packages;
using Toepan.Demo.Scenario;

namespace Toepan.Demo.Commands;

/// <summary>
/// <c>load --url URL --token-file FILE --seed N</c>: uploads every run through the package route, as a laboratory would, then
/// records the twins as the administrator.
/// Uploading again changes nothing: the service knows the same bytes.
/// </summary>
public static class LoadCommand
{
    public static async Task<int> RunAsync(Uri url, string tokenFile, int seed)
    {
        using var firstRun = JsonDocument.Parse(await File.ReadAllBytesAsync(tokenFile));
        using var client = new HttpClient { BaseAddress = url, Timeout = TimeSpan.FromMinutes(2) };
        client.DefaultRequestHeaders.Authorization =
            new AuthenticationHeaderValue("Bearer", firstRun.RootElement.GetProperty("ingestToken").GetString());
        var runs = NorthmoorProgramme.Runs;
        for (var i = 0; i < runs.Count; i++)
        {
            if (!await UploadAsync(client, runs[i], seed, $"{i + 1}/{runs.Count}"))
            {
                return 1;
            }
        }

        using var administrator = await AdministratorSession.SignIn(url, firstRun.RootElement.GetProperty("administrator"));
        if (administrator is null)
        {
            Console.WriteLine("The administrator's first password has been changed, so the demo's twins are left to record by hand.");
            return 0;
        }

        return await RecordTwinsAsync(administrator) ? 0 : 1;
    }

    private static async Task<bool> UploadAsync(HttpClient client, DemoRun run, int seed, string progress)
    {
        using var zip = new MemoryStream();
        RunZip.Write(zip, run, seed);
        using var body = new ByteArrayContent(zip.ToArray());
        body.Headers.ContentType = new MediaTypeHeaderValue("application/zip");
        using var response = await client.PostAsync("/api/v1/packages", body);
        if (!response.IsSuccessStatusCode)
        {
            await Console.Error.WriteLineAsync($"{run.Test}: the service answered {(int)response.StatusCode}: {await response.Content.ReadAsStringAsync()}");
            return false;
        }

        var answer = await response.Content.ReadFromJsonAsync<JsonElement>();
        var level = answer.GetProperty("overall") is { ValueKind: JsonValueKind.String } word ? $"{word.GetString()} protection" : "not rated";
        var valid = answer.GetProperty("valid").GetBoolean() ? "" : ", not valid";
        Console.WriteLine($"demo {progress}  {run.Test}  {run.Vehicle.Make} {run.Vehicle.Model}: {level}{valid}");
        return true;
    }

    private static async Task<bool> RecordTwinsAsync(HttpClient client)
    {
        foreach (var (twin, of, evidence) in Fleet.Twins)
        {
            var body = new { vehicle = twin.Key, make = twin.Make, model = twin.Model, modelYearFrom = twin.YearFrom, modelYearTo = twin.YearTo, evidence };
            using var response = await client.PostAsJsonAsync($"/api/v1/vehicles/{of.Key}/twins", body);
            if (!response.IsSuccessStatusCode && response.StatusCode != HttpStatusCode.Conflict)
            {
                await Console.Error.WriteLineAsync($"{twin.Key}: the service answered {(int)response.StatusCode}: {await response.Content.ReadAsStringAsync()}");
                return false;
            }
        }

        return true;
    }
}
