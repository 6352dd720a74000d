using Microsoft.AspNetCore.Http;

namespace Toepan.Api.Security;

/// <summary>Refusals outside an endpoint's own answer, in the one error body of the API (RFC 9457), whatever the request accepts.</summary>
public static class ProblemAnswer
{
    public static Task Write(HttpContext context, int status, string title, string detail) =>
        TypedResults.Problem(statusCode: status, title: title, detail: detail).ExecuteAsync(context);

    public static Task Unauthorized(HttpContext context) => Write(
        context, StatusCodes.Status401Unauthorized, "Not signed in", "Send 'Authorization: Bearer <token>' with a token that is known, unexpired and not revoked, or sign in.");

    public static Task Forbidden(HttpContext context) => Write(
        context, StatusCodes.Status403Forbidden, "Not allowed", "Your roles do not allow this.");
}
