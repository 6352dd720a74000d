using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;

namespace Toepan.Api;

/// <summary>What the framework could not read of a request (a word where a number is asked, broken JSON) as problem details that say so.</summary>
internal sealed class BadRequestHandler : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        if (exception is not BadHttpRequestException refused || httpContext.Response.HasStarted)
        {
            return false;
        }

        await TypedResults.Problem(refused.Message, statusCode: refused.StatusCode, title: "Bad request").ExecuteAsync(httpContext);
        return true;
    }
}
