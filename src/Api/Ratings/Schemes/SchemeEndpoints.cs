using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Ratings.Recomputations;
using Toepan.Api.Security;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings.Schemes;

/// <summary>Editions of the rating rules: read, tried, brought, adopted.</summary>
internal static class SchemeEndpoints
{
    private const string Csv = "text/csv";

    public static void MapSchemes(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/schemes", "Ratings");

        group.MapGet("", List).Describe("listSchemes", "Rating schemes", "Every edition with how many runs it rates; default marks the one that rates new uploads.");
        group.MapGet("/{key}", Get).OrNotFound().Describe("getScheme", "One rating scheme", "Its rules, and what was checked of the whole.");
        group.MapGet("/{key}/document", Document).OrNotFound()
            .Produces(StatusCodes.Status200OK, contentType: "application/json").Produces(StatusCodes.Status200OK, contentType: "application/yaml")
            .Describe("downloadScheme", "A scheme's document", "JSON or YAML, byte for byte as it was brought.");
        group.MapPost("", Upload).RequireRoles(Role.Manager, Role.Administrator)
            .Accepts<Stream>("application/yaml", "application/json", "application/x-yaml", "text/yaml", "text/plain", "application/octet-stream")
            .ProducesProblem(StatusCodes.Status409Conflict).ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .Describe(
                "uploadScheme", "Bring a scheme",
                "Body: the document, JSON or YAML as /schemas/scheme.json says, at most 1 MiB. Managers and administrators. 201 when kept; 200 for the same bytes again and for a dry run; a draft of the same key is replaced; 409 when the edition rates runs; 422 with problems, each with its line, when it is broken or its rules contradict one another.");
        group.MapGet("/{key}/what-if", WhatIf).OrNotFound().Produces<string>(StatusCodes.Status200OK, Csv)
            .Describe(
                "tryScheme", "What a scheme would change",
                "Every current run of its procedure rated by it from stored measures: runs whose level changes with the rule or bound that does it, and counts from level to level by class. CSV by Accept.");
        group.MapPost("/{key}/adopt", Adopt).OrNotFound().RequireRoles(Role.Manager, Role.Administrator).ProducesProblem(StatusCodes.Status409Conflict)
            .Describe(
                "adoptScheme", "Adopt a scheme",
                "Signed by repeating the key in confirm, with a reason. From then on it rates new uploads; every run is rated by it in the background, and released ratings stay. Managers and administrators. Answers the recomputation.");
        app.MapGet("/schemas/scheme.json", Schema).WithTags("Ratings")
            .Produces<string>(StatusCodes.Status200OK, "application/schema+json")
            .Describe("schemeSchema", "JSON Schema of a scheme", "What a scheme document holds, as JSON or YAML.");
    }

    private static ContentHttpResult Schema() => TypedResults.Text(SchemeSchema.Text, "application/schema+json", System.Text.Encoding.UTF8);

    private static async Task<Results<Ok<IReadOnlyList<SchemeSummary>>, ProblemHttpResult>> List(Viewer viewer, SchemeService schemes, CancellationToken cancellation) =>
        (await schemes.List(viewer, cancellation)).Answer();

    private static async Task<Results<Ok<SchemeDetail>, ProblemHttpResult>> Get(Viewer viewer, SchemeService schemes, string key, CancellationToken cancellation) =>
        (await schemes.Get(viewer, key, cancellation)).Answer();

    private static async Task<Results<FileContentHttpResult, ProblemHttpResult>> Document(
        Viewer viewer, SchemeService schemes, string key, CancellationToken cancellation)
    {
        var outcome = await schemes.Document(viewer, key, cancellation);
        return outcome.Value is { } file ? TypedResults.File(file.Bytes, file.MediaType, file.Name) : outcome.Failure!.ToProblem();
    }

    private static async Task<Results<Created<SchemeUpload>, Ok<SchemeUpload>, ProblemHttpResult>> Upload(
        Viewer viewer, SchemeService schemes, HttpRequest request, [Description("Say what would be, store nothing.")] bool? dryRun,
        [Description("File name; its ending chooses JSON or YAML. Left out: by the content type, else by how the document begins.")] string? file,
        CancellationToken cancellation)
    {
        var outcome = await schemes.Upload(viewer, request.Body, file ?? Named(request.ContentType), dryRun ?? false, cancellation);
        return outcome.Value switch
        {
            null => outcome.Failure!.ToProblem(),
            { Created: true, DryRun: false } kept => TypedResults.Created($"/api/v1/schemes/{kept.Key}", kept),
            var known => TypedResults.Ok(known),
        };
    }

    private static async Task<Results<Ok<WhatIf>, ContentHttpResult, ProblemHttpResult>> WhatIf(
        Viewer viewer, WhatIfService whatIf, HttpRequest request, string key, [Description("Only runs of this class.")] string? @class, CancellationToken cancellation)
    {
        var outcome = await whatIf.Get(viewer, key, @class, cancellation);
        return outcome.Value is not { } answer ? outcome.Failure!.ToProblem()
            : request.Headers.Accept.ToString().Contains(Csv, StringComparison.OrdinalIgnoreCase)
                ? TypedResults.Text(WhatIfCsv.Write(answer), Csv, System.Text.Encoding.UTF8)
                : TypedResults.Ok(answer);
    }

    private static async Task<Results<Ok<Recomputation>, ProblemHttpResult>> Adopt(
        Viewer viewer, RecomputationService recomputations, string key, SignedAct act, CancellationToken cancellation) =>
        (await recomputations.Adopt(viewer, key, act.Confirm, act.Reason, cancellation)).Answer();

    private static string Named(string? contentType) => contentType switch
    {
        { } type when type.Contains("yaml", StringComparison.OrdinalIgnoreCase) => "scheme.yaml",
        { } type when type.Contains("json", StringComparison.OrdinalIgnoreCase) => "scheme.json",
        _ => "scheme",
    };
}

/// <summary>What a signed act is sent with.</summary>
/// <param name="Confirm">The key or word of what is meant, typed again.</param>
/// <param name="Reason">Why.</param>
public sealed record SignedAct(string? Confirm, string? Reason);
