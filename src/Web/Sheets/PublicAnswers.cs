using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;
using Toepan.Api.Sheets.Releases;

namespace Toepan.Web.Sheets;

/// <summary>
/// Public answers: no cookie, an entity tag, and a lifetime that ends with the next whole step, on which embargoes end. Nothing tells whether one is
/// near: the lifetime is the same whatever is to come.
/// </summary>
public sealed class PublicAnswers(IServiceProvider services, ILoggerFactory loggers, IOptions<ReleaseSettings> settings)
{
    /// <summary>What every address that leads to nothing public answers, known or not.</summary>
    private static readonly byte[] Nothing = Encoding.UTF8.GetBytes("There is no released sheet at this address.\n");

    public async Task<byte[]> Render<TPage>(Dictionary<string, object?> parameters)
        where TPage : IComponent
    {
        await using var renderer = new HtmlRenderer(services, loggers);
        var html = await renderer.Dispatcher.InvokeAsync(async () =>
            (await renderer.RenderComponentAsync<TPage>(ParameterView.FromDictionary(parameters))).ToHtmlString());
        return Encoding.UTF8.GetBytes(html);
    }

    public IResult Give(HttpContext http, DateTimeOffset asOf, byte[] bytes, string type)
    {
        var left = PublicSheets.SecondsLeft(asOf, settings.Value.Step);
        http.Response.Headers.CacheControl = $"public, max-age={left}, must-revalidate";
        return TypedResults.Bytes(bytes, type, entityTag: new EntityTagHeaderValue($"\"{Base64Url.EncodeToString(SHA256.HashData(bytes).AsSpan(0, 16))}\""));
    }

    public static async Task NotFound(HttpContext http)
    {
        http.Response.StatusCode = StatusCodes.Status404NotFound;
        http.Response.Headers.CacheControl = "no-cache";
        http.Response.ContentType = "text/plain; charset=utf-8";
        http.Response.ContentLength = Nothing.Length;
        if (!HttpMethods.IsHead(http.Request.Method))
        {
            await http.Response.Body.WriteAsync(Nothing, http.RequestAborted);
        }
    }
}
