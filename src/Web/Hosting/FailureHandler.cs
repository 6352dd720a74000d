using System.Data.Common;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Toepan.Api.Security;

namespace Toepan.Web.Hosting;

/// <summary>
/// Turns what nobody caught on an API route into problem details that say what the caller can do, and nothing of the inside.
/// Whatever was half done was in a transaction and is gone.
/// </summary>
internal sealed class FailureHandler(ILogger<FailureHandler> log) : IExceptionHandler
{
    /// <summary>ENOSPC, errno(3).</summary>
    private const int NoSpaceLeft = 28;

    /// <summary>SQLSTATE classes (PostgreSQL, appendix A): no connection, no such database, no resources, shutting down.</summary>
    private static readonly string[] AwayStates = ["08", "3D", "53", "57P"];

    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        if (!ApiPaths.Covers(httpContext.Request.Path))
        {
            return false;
        }

        var (status, title, detail) = Describe(exception);
        log.LogError(exception, "{Method} {Path} answered {Status}", httpContext.Request.Method, httpContext.Request.Path, status);
        if (status == StatusCodes.Status503ServiceUnavailable)
        {
            httpContext.Response.Headers.RetryAfter = "5";
        }

        await ProblemAnswer.Write(httpContext, status, title, detail);
        return true;
    }

    private static (int Status, string Title, string Detail) Describe(Exception exception) => exception switch
    {
        DbUpdateException { InnerException: { } inner } => Describe(inner),
        PostgresException { SqlState: PostgresErrorCodes.DiskFull } => Full("The disk of the database is full"),
        IOException full when (full.HResult & 0xFFFF) == NoSpaceLeft => Full("The disk for temporary files is full"),
        PostgresException { SqlState: var state } when Array.Exists(AwayStates, prefix => state.StartsWith(prefix, StringComparison.Ordinal)) => Away,
        PostgresException => Broken,
        DbException or InvalidOperationException { InnerException: DbException } => Away,
        _ => Broken,
    };

    private static (int, string, string) Full(string what) => (StatusCodes.Status507InsufficientStorage, "No space left", $"{what}; nothing was stored. An administrator must make room.");

    private static (int, string, string) Away =>
        (StatusCodes.Status503ServiceUnavailable, "The database does not answer", "Nothing was stored. Try again in a moment.");

    private static (int, string, string) Broken =>
        (StatusCodes.Status500InternalServerError, "The service failed", "Nothing was half stored. If it fails again, give an administrator the time of this request.");
}
