using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;
using Toepan.Api.Security;

namespace Toepan.Api;

/// <summary>What the framework could not read of a request (a word where a number is asked, broken JSON) as problem details that say so.</summary>
internal sealed class BadRequestHandler : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        if (exception is not BadHttpRequestException refused || !ApiPaths.Covers(httpContext.Request.Path))
        {
            return false;
        }

        await ProblemAnswer.Write(httpContext, refused.StatusCode, "Bad request", Detail(refused));
        return true;
    }

    private static string Detail(BadHttpRequestException refused) =>
        refused.InnerException is { } cause ? $"{refused.Message} {cause.Message}" : refused.Message;
}
