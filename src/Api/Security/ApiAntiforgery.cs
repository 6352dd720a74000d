using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;

namespace Toepan.Api.Security;

/// <summary>
/// Requests under <c>/api</c> that change something and come with a person's cookie must carry the antiforgery token in its header
/// (<c>RequestVerificationToken</c>; every page with a form holds one). Bearer tokens are not sent by browsers on their own and need none.
/// </summary>
internal sealed class ApiAntiforgery(RequestDelegate next, IAntiforgery antiforgery)
{
    public async Task InvokeAsync(HttpContext context)
    {
        if (!Needs(context))
        {
            await next(context);
        }
        else if (context.Request.Headers.ContainsKey(Header(context)) && await antiforgery.IsRequestValidAsync(context))
        {
            await next(context);
        }
        else
        {
            await ProblemAnswer.Write(
                context, StatusCodes.Status400BadRequest, "Antiforgery token missing or wrong",
                $"A signed-in browser must send the page's antiforgery token in the header {Header(context)}. Reload the page.");
        }
    }

    private static bool Needs(HttpContext context) =>
        ApiPaths.Covers(context.Request.Path)
        && !(HttpMethods.IsGet(context.Request.Method) || HttpMethods.IsHead(context.Request.Method)
            || HttpMethods.IsOptions(context.Request.Method) || HttpMethods.IsTrace(context.Request.Method))
        && context.User.Identities.Any(identity => identity is { IsAuthenticated: true } && identity.AuthenticationType == IdentityConstants.ApplicationScheme);

    private string Header(HttpContext context) => antiforgery.GetTokens(context).HeaderName ?? "RequestVerificationToken";
}
