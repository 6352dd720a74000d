using System.Net;
using System.Text.RegularExpressions;

namespace Toepan.Support;

/// <summary>A browser without a screen: keeps cookies and finds antiforgery tokens in pages.</summary>
public sealed partial class Browser(HttpClient client) : IDisposable
{
    public const string AntiforgeryHeader = "RequestVerificationToken";
    private const string AntiforgeryField = "__RequestVerificationToken";
    private const string SignInPath = "/sign-in";

    /// <summary>Carries the cookies of everything done so far.</summary>
    public HttpClient Client => client;

    /// <summary>Fills in the sign-in form and sends it; the answer, which is a redirect where it let the person in.</summary>
    public async Task<HttpResponseMessage> TrySignIn(string name, string password)
    {
        using var form = new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["_handler"] = "sign-in", [AntiforgeryField] = await AntiforgeryToken(SignInPath), ["Form.Name"] = name, ["Form.Password"] = password,
        });
        return await client.PostAsync(SignInPath, form);
    }

    public async Task SignIn(TestAccount account)
    {
        using var answer = await TrySignIn(account.Name, account.Password);
        if (answer.StatusCode != HttpStatusCode.Redirect)
        {
            throw new InvalidOperationException($"Sign-in answered {answer.StatusCode}: {await answer.Content.ReadAsStringAsync()}");
        }
    }

    /// <summary>Opens a page and sends one of its forms.</summary>
    public async Task<HttpResponseMessage> Submit(string page, string handler, params (string Name, string Value)[] fields)
    {
        var sent = fields.Prepend((Name: "_handler", Value: handler)).Append((Name: AntiforgeryField, Value: await AntiforgeryToken(page)));
        using var form = new FormUrlEncodedContent(sent.Select(field => KeyValuePair.Create(field.Name, field.Value)));
        return await client.PostAsync(page, form);
    }

    /// <summary>The token in the first form of a page.</summary>
    public async Task<string> AntiforgeryToken(string page)
    {
        var html = await client.GetStringAsync(page);
        return WebUtility.HtmlDecode(HiddenField().Match(html).Groups[1].Value);
    }

    public void Dispose() => client.Dispose();

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]*value=\"([^\"]+)\"")]
    private static partial Regex HiddenField();
}
