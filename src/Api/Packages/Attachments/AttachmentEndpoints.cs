using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;

namespace Toepan.Api.Packages.Attachments;

/// <summary>Photographs, films and documents: in, and what is said of them.</summary>
internal static class AttachmentEndpoints
{
    private const string Anything = "*/*";
    private static readonly Role[] Keepers = [Role.Engineer, Role.Manager, Role.Administrator];

    public static void MapAttachments(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Attachments").ProducesProblem(StatusCodes.Status404NotFound);

        group.MapGet("/tests/{test}/attachments", OfRun).Describe(
            "listRunAttachments", "Attachments of a run", "Photographs, films, documents and other files: those of the current package, then those attached afterwards. withdrawn=true gives hidden ones too.");
        group.MapPost("/tests/{test}/attachments", ToRun).TakesFile().Describe(
            "attachToRun", "Attach a file to a run",
            "Body: the bytes. Engineers, managers and administrators. 201 when attached, 200 where the run has the same bytes already. What it is is told from its bytes; anything but JPEG, PNG, WebP, MP4, WebM and PDF is kept and offered for download only.");
        group.MapGet("/specimens/{id:long}/attachments", OfSpecimen).Describe(
            "listSpecimenAttachments", "Attachments of a specimen", "Photographs and other files of the one vehicle that is crashed. withdrawn=true gives hidden ones too.");
        group.MapPost("/specimens/{id:long}/attachments", ToSpecimen).TakesFile().Describe(
            "attachToSpecimen", "Attach a file to a specimen", "As to a run.");
        group.MapGet("/attachments/{id:long}", Get).Describe("getAttachment", "One attachment", "What it is, what is said of it, who did what with it.");
        group.MapPut("/attachments/{id:long}", Describe).Changes(Keepers).Describe(
            "describeAttachment", "Describe an attachment", "Kind, caption, camera, time, and before, during or after the crash. Names the version last read; 409 where somebody changed it since.");
        group.MapPost("/attachments/{id:long}/withdrawal", Withdraw).Changes(Keepers).Describe(
            "withdrawAttachment", "Withdraw an attachment", "Hides it, with a reason; the bytes are kept, and it leaves the sheet.");
        group.MapPost("/attachments/{id:long}/restoration", Restore).Changes(Keepers).Describe(
            "restoreAttachment", "Show a withdrawn attachment again", "With a reason.");
        group.MapPut("/attachments/{id:long}/sheet", Mark).Changes(Role.Communications, Role.Manager, Role.Administrator).Describe(
            "markForSheet", "Put a photograph on the sheet",
            "Communications, managers and administrators. With words for who cannot see it; without words it is taken off. Only photographs: of a film nothing is given to the public.");
    }

    private static RouteHandlerBuilder TakesFile(this RouteHandlerBuilder route) => route.RequireRoles(Keepers)
        .WithMetadata(new DisableRequestSizeLimitAttribute())
        .Accepts(typeof(Stream), isOptional: true, Anything)
        .ProducesProblem(StatusCodes.Status413PayloadTooLarge);

    internal static RouteHandlerBuilder Changes(this RouteHandlerBuilder route, params Role[] roles) =>
        route.RequireRoles(roles).ProducesProblem(StatusCodes.Status409Conflict);

    private static async Task<Results<Ok<AttachmentJson[]>, ProblemHttpResult>> OfRun(
        Viewer viewer, AttachmentService attachments, string test, bool? withdrawn, CancellationToken cancellation) =>
        (await attachments.List(viewer, AttachmentSubject.Run(test), withdrawn ?? false, cancellation)).Answer(list => list.Select(AttachmentJson.Of).ToArray());

    private static async Task<Results<Ok<AttachmentJson[]>, ProblemHttpResult>> OfSpecimen(
        Viewer viewer, AttachmentService attachments, long id, bool? withdrawn, CancellationToken cancellation) =>
        (await attachments.List(viewer, AttachmentSubject.Of(id), withdrawn ?? false, cancellation)).Answer(list => list.Select(AttachmentJson.Of).ToArray());

    private static Task<Results<Created<AttachmentJson>, Ok<AttachmentJson>, ProblemHttpResult>> ToRun(
        Viewer viewer, AttachmentService attachments, HttpRequest request, string test, [AsParameters] FileWords words, CancellationToken cancellation) =>
        Attach(viewer, attachments, request, AttachmentSubject.Run(test), words, cancellation);

    private static Task<Results<Created<AttachmentJson>, Ok<AttachmentJson>, ProblemHttpResult>> ToSpecimen(
        Viewer viewer, AttachmentService attachments, HttpRequest request, long id, [AsParameters] FileWords words, CancellationToken cancellation) =>
        Attach(viewer, attachments, request, AttachmentSubject.Of(id), words, cancellation);

    private static async Task<Results<Created<AttachmentJson>, Ok<AttachmentJson>, ProblemHttpResult>> Attach(
        Viewer viewer, AttachmentService attachments, HttpRequest request, AttachmentSubject subject, FileWords words, CancellationToken cancellation)
    {
        if (request.ContentLength > attachments.MaxBytes)
        {
            return attachments.TooLarge().ToProblem();
        }

        var facts = AttachmentWords.Facts(words.Kind, words.Moment, new(null, words.Caption, words.Camera, words.TakenAt, null));
        if (facts.Value is not { } said)
        {
            return facts.Failure!.ToProblem();
        }

        var outcome = await attachments.Attach(viewer, subject, request.Body, words.Name, said, cancellation);
        return outcome.Value switch
        {
            null => outcome.Failure!.ToProblem(),
            { Created: true } made => TypedResults.Created($"/api/v1/attachments/{made.Attachment.Id}", AttachmentJson.Of(made.Attachment)),
            var known => TypedResults.Ok(AttachmentJson.Of(known.Attachment)),
        };
    }

    private static async Task<Results<Ok<AttachmentJson>, ProblemHttpResult>> Get(
        Viewer viewer, AttachmentService attachments, long id, CancellationToken cancellation) =>
        (await attachments.Get(viewer, id, cancellation)).Answer(AttachmentJson.Of);

    private static async Task<Results<Ok<AttachmentJson>, ProblemHttpResult>> Describe(
        Viewer viewer, AttachmentEditor editor, long id, AttachmentChangeJson body, CancellationToken cancellation)
    {
        var facts = AttachmentWords.Facts(body.Kind, body.Moment, new(null, body.Caption, body.Camera, body.TakenAt, null));
        return body.Version is not { } version ? NoVersion().ToProblem()
            : facts.Value is { } said ? (await editor.Describe(viewer, id, said, version, cancellation)).Answer(AttachmentJson.Of)
            : facts.Failure!.ToProblem();
    }

    private static async Task<Results<Ok<AttachmentJson>, ProblemHttpResult>> Withdraw(
        Viewer viewer, AttachmentEditor editor, long id, AttachmentReasonJson body, CancellationToken cancellation) =>
        body.Version is { } version ? (await editor.Withdraw(viewer, id, body.Reason, version, cancellation)).Answer(AttachmentJson.Of) : NoVersion().ToProblem();

    private static async Task<Results<Ok<AttachmentJson>, ProblemHttpResult>> Restore(
        Viewer viewer, AttachmentEditor editor, long id, AttachmentReasonJson body, CancellationToken cancellation) =>
        body.Version is { } version ? (await editor.Restore(viewer, id, body.Reason, version, cancellation)).Answer(AttachmentJson.Of) : NoVersion().ToProblem();

    private static async Task<Results<Ok<AttachmentJson>, ProblemHttpResult>> Mark(
        Viewer viewer, AttachmentEditor editor, long id, SheetMarkJson body, CancellationToken cancellation) =>
        body.Version is { } version ? (await editor.MarkForSheet(viewer, id, body.AlternativeText, version, cancellation)).Answer(AttachmentJson.Of) : NoVersion().ToProblem();

    internal static Failure NoVersion() => Failure.BadRequest("'version' is missing: the one last read.");
}

/// <summary>What an upload says of its file, in the address.</summary>
/// <param name="Name">File name.</param>
/// <param name="Kind">photograph, film, document or other; left out: as the bytes show.</param>
/// <param name="Caption">Caption.</param>
/// <param name="Camera">Camera.</param>
/// <param name="TakenAt">When it was taken.</param>
/// <param name="Moment">before, during or after the crash.</param>
internal sealed record FileWords(
    [property: Description("File name.")] string? Name,
    [property: Description("photograph, film, document or other; left out: as the bytes show.")] string? Kind,
    [property: Description("Caption.")] string? Caption,
    [property: Description("Camera.")] string? Camera,
    [property: Description("When it was taken.")] DateTimeOffset? TakenAt,
    [property: Description("before, during or after the crash.")] string? Moment);
