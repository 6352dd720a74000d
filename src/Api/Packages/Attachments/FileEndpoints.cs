using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Microsoft.Net.Http.Headers;
using Toepan.Api.Security;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages.Attachments;

/// <summary>The bytes of attachments out, small and public pictures, and films with their times.</summary>
internal static class FileEndpoints
{
    /// <summary>A browser may keep it but asks each time whether it still may show it.</summary>
    private const string AskEachTime = "private, no-cache";

    public static void MapAttachmentFiles(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Attachments").ProducesProblem(StatusCodes.Status404NotFound);

        group.MapGet("/attachments/{id:long}/content", Content)
            .Produces(StatusCodes.Status200OK, contentType: FileSignature.Unknown).Produces(StatusCodes.Status206PartialContent, contentType: FileSignature.Unknown)
            .Describe(
                "getAttachmentContent", "The bytes of an attachment",
                "Byte for byte as they came, with ranges, ETag and If-Range, so that a film can be sought. JPEG, PNG, WebP, MP4, WebM and PDF are shown; anything else, and with download=true everything, is sent to be saved.");
        group.MapGet("/attachments/{id:long}/thumbnail", Thumbnail).ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .Produces(StatusCodes.Status200OK, contentType: FileSignature.Jpeg)
            .Describe("getThumbnail", "A small picture of a photograph", "A JPEG of at most 480 pixels, the right way up, with nothing but its pixels. 422 where it cannot be decoded or claims too many pixels.");
        group.MapGet("/attachments/{id:long}/public-copy", PublicCopy)
            .ProducesProblem(StatusCodes.Status409Conflict).ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .Produces(StatusCodes.Status200OK, contentType: FileSignature.Jpeg)
            .Describe(
                "getPublicCopy", "A photograph as the public would have it",
                "Of one marked for the sheet: pixels alone, at most 2400 on the longer edge, the right way up; no metadata of any kind and no file name. Not public itself.");
        group.MapGet("/tests/{test}/films", Films).Describe(
            "listFilms", "Films of a run", "Each with frame rate, frame of contact and playback rate: by Movie/films.csv of the package, or as set on the page.");
        group.MapPut("/attachments/{id:long}/film-times", SetTimes).Changes(Role.Engineer, Role.Manager, Role.Administrator).Describe(
            "setFilmTimes", "Set frame rate and time zero of a film",
            "Engineers, managers and administrators. Earlier settings are kept. Names the version last read; 409 where somebody set it since.");
    }

    private static async Task<Results<FileStreamHttpResult, ProblemHttpResult>> Content(
        Viewer viewer, AttachmentContent files, HttpResponse response, long id,
        [Description("Send it to be saved, whatever it is.")] bool? download, CancellationToken cancellation)
    {
        var outcome = await files.Open(viewer, id, cancellation);
        if (outcome.Value is not { } file)
        {
            return outcome.Failure!.ToProblem();
        }

        var type = file.Attachment.MediaType;
        var disposition = new ContentDispositionHeaderValue(FileSignature.IsShown(type) && download is not true ? "inline" : "attachment");
        disposition.SetHttpFileName(file.Attachment.Name);
        response.Headers.ContentDisposition = disposition.ToString();
        response.Headers.XContentTypeOptions = "nosniff";
        response.Headers.CacheControl = AskEachTime;
        return TypedResults.Stream(file.Content, type, entityTag: Tag(file.Attachment.Sha256), enableRangeProcessing: true);
    }

    private static async Task<IResult> Thumbnail(
        Viewer viewer, AttachmentService attachments, PictureService pictures, HttpContext http, long id, CancellationToken cancellation)
    {
        var found = await attachments.Get(viewer, id, cancellation);
        if (found.Value is not { Withdrawn: false } kept)
        {
            return (found.Failure ?? AttachmentService.Unknown(id)).ToProblem();
        }

        var tag = Tag($"{kept.Sha256}-{PictureService.ThumbnailEdge}");
        http.Response.Headers.CacheControl = AskEachTime;
        if (http.Request.GetTypedHeaders().IfNoneMatch.Any(known => known.Compare(tag, useStrongComparison: false)))
        {
            http.Response.GetTypedHeaders().ETag = tag;
            return TypedResults.StatusCode(StatusCodes.Status304NotModified);
        }

        var outcome = await pictures.Thumbnail(viewer, id, cancellation);
        return outcome.Value is { } picture ? TypedResults.File(picture.Bytes, picture.MediaType, entityTag: tag) : outcome.Failure!.ToProblem();
    }

    private static async Task<Results<FileContentHttpResult, ProblemHttpResult>> PublicCopy(
        Viewer viewer, PictureService pictures, long id, CancellationToken cancellation)
    {
        var outcome = await pictures.PublicCopy(viewer, id, cancellation);
        return outcome.Value is { } copy ? TypedResults.File(copy.Picture.Bytes, copy.Picture.MediaType) : outcome.Failure!.ToProblem();
    }

    private static async Task<Results<Ok<FilmJson[]>, ProblemHttpResult>> Films(
        Viewer viewer, FilmService films, string test, CancellationToken cancellation) =>
        (await films.List(viewer, test, cancellation)).Answer(list => list.Select(FilmJson.Of).ToArray());

    private static async Task<Results<Ok<FilmJson>, ProblemHttpResult>> SetTimes(
        Viewer viewer, FilmService films, long id, FilmTimesJson body, CancellationToken cancellation) =>
        body is { Version: { } version, FramesPerSecond: { } rate, TimeZeroFrame: { } zero }
            ? (await films.SetTiming(viewer, id, new(rate, zero, body.PlaybackFramesPerSecond), version, body.Reason, cancellation)).Answer(FilmJson.Of)
            : Failure.BadRequest("framesPerSecond, timeZeroFrame and version are needed.").ToProblem();

    private static EntityTagHeaderValue Tag(string text) => new($"\"{text}\"");
}
