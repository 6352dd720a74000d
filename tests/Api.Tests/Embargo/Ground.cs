using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Toepan.Api.Security;
using Toepan.Api.Tests.Packages;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Embargo;

/// <summary>What marks are planted in: the service, calls that must succeed, and what the walk needs to know of the result.</summary>
internal sealed class Ground(ApiHost api, Marks marks)
{
    public ApiHost Api => api;

    public Marks Marks => marks;

    /// <summary>Route parameters by the word before them and their own.</summary>
    public Dictionary<string, RouteValue> Values { get; } = [];

    /// <summary>What no response may hold.</summary>
    public List<string> Secrets { get; } = [];

    /// <summary>A machine with a name of its own and these roles.</summary>
    public async Task<HttpClient> Machine(HttpClient administrator, string name, IEnumerable<Role> roles)
    {
        var issued = await Create(administrator, "/api/v1/tokens", new { name, roles = roles.Select(ViewerClaims.Name) });
        var secret = issued.GetProperty("secret").GetString()!;
        Secrets.Add(secret);
        var client = Api.Anonymous();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", secret);
        return client;
    }

    public static async Task<JsonElement> Create(HttpClient client, string path, object body)
    {
        using var answer = await client.PostAsJsonAsync(path, body, TestContext.Current.CancellationToken);
        return await Demand(answer, path);
    }

    public static async Task<JsonElement> Change(HttpClient client, string path, object body)
    {
        using var answer = await client.PutAsJsonAsync(path, body, TestContext.Current.CancellationToken);
        return await Demand(answer, path);
    }

    public static async Task<JsonElement> Send(HttpClient client, string path, byte[] bytes, string mediaType)
    {
        using var body = new ByteArrayContent(bytes);
        body.Headers.ContentType = new MediaTypeHeaderValue(mediaType);
        using var answer = await client.PostAsync(path, body, TestContext.Current.CancellationToken);
        return await Demand(answer, path);
    }

    public static Task<JsonElement> Read(HttpClient client, string path) => client.GetFromJsonAsync<JsonElement>(path, TestContext.Current.CancellationToken);

    public static async Task Upload(HttpClient client, byte[] zip)
    {
        var answer = await client.Upload(zip);
        Assert.True(answer.Status == HttpStatusCode.Created, answer.Json.ToString());
    }

    public async Task<RouteValue> Number(string query) => RouteValue.OfNumber(Convert.ToInt64(await Sql.Scalar(Api.Connections.Owner, query), CultureInfo.InvariantCulture));

    public async Task<RouteValue> Key(string query) => new((string)(await Sql.Scalar(Api.Connections.Owner, query))!, "0190a6c7-1111-7aaa-8bbb-123456789abc");

    private static async Task<JsonElement> Demand(HttpResponseMessage answer, string path)
    {
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(answer.IsSuccessStatusCode, $"{path}: {(int)answer.StatusCode} {text}");
        return JsonElement.Parse(text);
    }
}
