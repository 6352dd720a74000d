using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Microsoft.Net.Http.Headers;
using Toepan.Api.Security;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages;

/// <summary>Packages in, and out again.</summary>
internal static class PackageEndpoints
{
    private const string Zip = "application/zip";
    private const string Exported = "iso13499";

    public static void MapPackages(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Packages");

        group.MapPost("/packages", Upload).RequireRoles(Role.Engineer, Role.Manager, Role.Administrator)
            .WithMetadata(new DisableRequestSizeLimitAttribute())
            .Accepts(typeof(Stream), isOptional: true, Zip, "application/x-zip-compressed", "application/octet-stream")
            .ProducesProblem(StatusCodes.Status409Conflict).ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .Describe(
                "uploadPackage", "Upload a test package",
                "Body: the zip. Engineers, managers and administrators. 201 when stored; 200 for the same bytes again and for a dry run; 409 when the test has another package (sameContent tells whether only the zip differs), unless replaces names the current one and a reason is given; 422 with problems, and nothing stored, when it cannot be read; 413 above the size limit.");
        group.MapGet("/tests/{test}/package", Download).OrNotFound()
            .Produces(StatusCodes.Status200OK, contentType: Zip)
            .Describe(
                "downloadPackage", "Download the package of a run",
                "Byte for byte as uploaded; with format=iso13499 written anew as an ISO/TS 13499 package, whose upload gives the same measures.");
        app.MapGet("/schemas/programme.json", Schema).WithTags("Packages")
            .Produces<string>(StatusCodes.Status200OK, "application/schema+json")
            .Describe("programmeSchema", "JSON Schema of programme.json", "What a package's programme.json holds.");
    }

    private static async Task<Results<Created<UploadJson>, Ok<UploadJson>, ProblemHttpResult>> Upload(
        Viewer viewer, PackageService packages, HttpRequest request,
        [Description("Say what would be, store nothing.")] bool? dryRun,
        [Description("SHA-256 of the package to replace.")] string? replaces,
        [Description("Why it is replaced.")] string? reason,
        CancellationToken cancellation)
    {
        if (request.ContentLength > packages.MaxBytes)
        {
            return packages.TooLarge().ToProblem();
        }

        var outcome = await packages.Upload(viewer, request.Body, new UploadOptions(dryRun ?? false, replaces, reason), cancellation);
        return outcome.Value switch
        {
            null => outcome.Failure!.ToProblem(),
            { Created: true, DryRun: false } stored => TypedResults.Created($"/api/v1/tests/{stored.Test}", UploadJson.Of(stored)),
            var known => TypedResults.Ok(UploadJson.Of(known)),
        };
    }

    private static async Task<Results<FileStreamHttpResult, ProblemHttpResult>> Download(
        Viewer viewer, PackageDownloadService packages, string test,
        [Description("Left out: as uploaded. iso13499: written anew.")] string? format, CancellationToken cancellation)
    {
        if (format is not (null or Exported))
        {
            return Failure.BadRequest($"format is '{format}'; it is {Exported}, or left out for the package as uploaded.").ToProblem();
        }

        var outcome = format is null
            ? await packages.Download(viewer, test, cancellation)
            : await packages.Export(viewer, test, cancellation);
        return outcome.Value is { } download
            ? TypedResults.Stream(
                download.Content, Zip, download.FileName, entityTag: download.Sha256 is { } sha256 ? new EntityTagHeaderValue($"\"{sha256}\"") : null,
                enableRangeProcessing: true)
            : outcome.Failure!.ToProblem();
    }

    private static ContentHttpResult Schema() => TypedResults.Text(ProgrammeSchema.Text, "application/schema+json");
}
