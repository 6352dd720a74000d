using System.ComponentModel;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;

namespace Toepan.Api.Store;

/// <summary>The history: read, taken out, verified. Administrators and managers.</summary>
internal static class AuditEndpoints
{
    private const string JsonLines = "application/jsonl";

    public static void MapAudit(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/audit", "Audit").RequireRoles(Role.Administrator, Role.Manager);

        group.MapGet("", List).Describe(
            "listAudit", "The history", "Entries latest first, filtered by who, action, entity (or how it begins), from and to. before = the 'older' of the page before.");
        group.MapGet("/export", Export).Produces(StatusCodes.Status200OK, contentType: JsonLines).Produces(StatusCodes.Status200OK, contentType: MediaTypes.Csv).Describe(
            "exportAudit", "The history as a file", "JSON lines, or CSV by Accept or format=csv; in the order it was written, with the same filters.");
        group.MapGet("/verification", Verify).Describe(
            "verifyAudit", "Verify the history", "Walks the whole chain: whether it is whole, its last number and hash, else the first broken link and what is wrong with it.");
    }

    private static async Task<Results<Ok<AuditPageJson>, ProblemHttpResult>> List(
        Viewer viewer, AuditService audit, string? who, string? action, string? entity, DateTimeOffset? from, DateTimeOffset? to,
        [Description("Entries of a lower number alone.")] long? before,
        [Description("How many, 1 to 500; 50 where left out.")] int? size,
        CancellationToken cancellation) =>
        (await audit.List(viewer, new(who, action, entity, from, to), before, size ?? AuditService.PageSize, cancellation)).Answer(AuditPageJson.Of);

    private static Results<PushStreamHttpResult, ProblemHttpResult> Export(
        Viewer viewer, AuditService audit, HttpRequest request, string? who, string? action, string? entity, DateTimeOffset? from, DateTimeOffset? to,
        [Description("csv or jsonl; left out: by Accept.")] string? format,
        CancellationToken cancellation)
    {
        if (format is not (null or "csv" or "jsonl"))
        {
            return Failure.BadRequest($"format is '{format}'; it is csv or jsonl.").ToProblem();
        }

        if (MediaTypes.Choose(request, JsonLines, MediaTypes.Csv) is not { } type)
        {
            return MediaTypes.NotAcceptable(JsonLines, MediaTypes.Csv);
        }

        var outcome = audit.Export(viewer, new(who, action, entity, from, to), cancellation);
        return outcome.Value is { } entries
            ? TypedResults.Stream(body => Write(body, type, entries, cancellation), type, type == MediaTypes.Csv ? "history.csv" : "history.jsonl")
            : outcome.Failure!.ToProblem();
    }

    private static async Task Write(Stream body, string type, IAsyncEnumerable<AuditEntry> entries, CancellationToken cancellation)
    {
        await using var writer = new StreamWriter(body, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true);
        await (type == MediaTypes.Csv ? AuditExport.WriteCsv(writer, entries, cancellation) : AuditExport.WriteJsonLines(writer, entries, cancellation));
    }

    private static async Task<Results<Ok<AuditVerificationJson>, ProblemHttpResult>> Verify(
        Viewer viewer, AuditService audit, CancellationToken cancellation) => (await audit.Verify(viewer, cancellation)).Answer(AuditVerificationJson.Of);
}
