using Microsoft.AspNetCore.Http;

namespace Toepan.Api.Security;

/// <summary>Refuses a token made for reading whatever is not GET, HEAD or OPTIONS.</summary>
internal sealed class ReadOnlyTokens(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext context) =>
        context.User.HasClaim(claim => claim.Type == ViewerClaims.ReadOnly) && !IsReading(context.Request.Method)
            ? ProblemAnswer.Write(context, StatusCodes.Status403Forbidden, "Not allowed", "This token was made for reading.")
            : next(context);

    private static bool IsReading(string method) => HttpMethods.IsGet(method) || HttpMethods.IsHead(method) || HttpMethods.IsOptions(method);
}
