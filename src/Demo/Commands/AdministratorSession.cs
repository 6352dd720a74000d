using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Toepan.Demo.Commands;

/// <summary>
/// The administrator of first-run.json, signed in through the sign-in page: the ingest token uploads and reads, but who arranges the
/// programme is a person.
/// </summary>
internal static partial class AdministratorSession
{
    private const string SignInPath = "/sign-in";
    private const string AntiforgeryHeader = "RequestVerificationToken";

    /// <summary>A client with the person's cookie and antiforgery token; null where the password is no longer the first one.</summary>
    public static async Task<HttpClient?> SignIn(Uri url, JsonElement administrator)
    {
        var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = url };
        using var form = new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["_handler"] = "sign-in", ["__RequestVerificationToken"] = await Token(client, SignInPath),
            ["Form.Name"] = administrator.GetProperty("name").GetString()!, ["Form.Password"] = administrator.GetProperty("password").GetString()!,
        });
        using var answer = await client.PostAsync(SignInPath, form);
        if (answer.StatusCode != HttpStatusCode.Redirect)
        {
            client.Dispose();
            return null;
        }

        client.DefaultRequestHeaders.Add(AntiforgeryHeader, await Token(client, "/preferences"));
        return client;
    }

    private static async Task<string> Token(HttpClient client, string page) =>
        WebUtility.HtmlDecode(HiddenField().Match(await client.GetStringAsync(page)).Groups[1].Value);

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]*value=\"([^\"]+)\"")]
    private static partial Regex HiddenField();
}
