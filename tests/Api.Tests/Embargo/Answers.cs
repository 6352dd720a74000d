using System.Net;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.RegularExpressions;

namespace Toepan.Api.Tests.Embargo;

/// <summary>A request of the walk.</summary>
internal sealed record Question(string Verb, string Address, string Accept, string? Encoding = null)
{
    public override string ToString() => $"{Verb} {Address} (Accept: {Accept}{(Encoding is null ? "" : $"; {Encoding}")})";
}

/// <summary>A response, decompressed, with every header in one text.</summary>
internal sealed record Reply(Question Question, HttpStatusCode Status, string Headers, byte[] Body, string? MediaType);

/// <summary>Asks, and takes out of an answer what may differ between two that are alike.</summary>
internal static partial class Answers
{
    public static async Task<Reply> Ask(HttpClient client, Question question, CancellationToken cancellation)
    {
        using var request = new HttpRequestMessage(new HttpMethod(question.Verb), question.Address);
        request.Headers.TryAddWithoutValidation("Accept", question.Accept);
        if (question.Encoding is not null)
        {
            request.Headers.TryAddWithoutValidation("Accept-Encoding", question.Encoding);
        }

        if (question.Verb is "POST" or "PUT" or "PATCH" or "DELETE")
        {
            request.Content = new StringContent("{}", Encoding.UTF8, "application/json");
        }

        using var response = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancellation);
        var body = await response.Content.ReadAsByteArrayAsync(cancellation);
        var headers = response.Headers.Concat(response.Content.Headers).OrderBy(header => header.Key, StringComparer.OrdinalIgnoreCase)
            .SelectMany(header => header.Value.Select(value => $"{header.Key}: {value}\n"));
        return new(
            question, response.StatusCode, string.Concat(headers), MarkFinder.Decoded(body, response.Content.Headers.ContentEncoding),
            response.Content.Headers.ContentType?.MediaType);
    }

    /// <summary>The text without the address that was asked for, in any of the forms an answer may echo it in.</summary>
    public static string WithoutEcho(string text, string address)
    {
        var (path, query) = address.Split('?') is [var before, var after] ? (before, after) : (address, "");
        var back = query.Split("return=").Last();
        foreach (var one in (string[])[address, path, .. query.Length > 0 ? [query, back] : Array.Empty<string>()])
        {
            foreach (var form in (string[])[Uri.EscapeDataString(Uri.EscapeDataString(one)), Uri.EscapeDataString(one), UrlEncoder.Default.Encode(one), WebUtility.HtmlEncode(one), one])
            {
                text = text.Replace(form, "{address}", StringComparison.OrdinalIgnoreCase);
            }
        }

        return text;
    }

    /// <summary>What two answers have in common when they are alike: all but date, trace, antiforgery tokens, length and the echoed address.</summary>
    public static string Alike(Reply reply)
    {
        var headers = Varying().Replace(reply.Headers, "");
        var body = Encoding.Latin1.GetString(reply.Body);
        return WithoutEcho($"{(int)reply.Status}\n{Token().Replace(headers, "")}\n{Token().Replace(body, "")}", reply.Question.Address);
    }

    [GeneratedRegex("^(Date|Content-Length|Last-Modified): .*\n", RegexOptions.Multiline | RegexOptions.IgnoreCase)]
    private static partial Regex Varying();

    /// <summary>Data-protected tokens, and trace identifiers of W3C Trace Context.</summary>
    [GeneratedRegex("CfDJ8[A-Za-z0-9_-]+|00-[0-9a-f]{32}-[0-9a-f]{16}-0[01]")]
    private static partial Regex Token();
}
