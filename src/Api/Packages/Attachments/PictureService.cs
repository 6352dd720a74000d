using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Packages.Attachments;

/// <summary>A photograph as the public may have it: pixels alone, words for who cannot see it, no name.</summary>
/// <param name="Attachment">Number of the attachment, for the laboratory's own record.</param>
/// <param name="Sha256">SHA-256 of the original, for the laboratory's own record.</param>
/// <param name="AlternativeText">What it shows.</param>
/// <param name="Picture">The picture.</param>
public sealed record PublicPhotograph(long Attachment, string Sha256, string AlternativeText, DrawnPicture Picture);

/// <summary>Pictures drawn anew: small ones for lists, and copies for the public.</summary>
public sealed class PictureService(IDbContextFactory<ProgrammeDb> contexts, IOptions<AttachmentSettings> settings)
{
    /// <summary>Longer edge of a thumbnail, pixels.</summary>
    public const int ThumbnailEdge = 480;

    /// <summary>Longer edge of a public copy, pixels.</summary>
    public const int PublicEdge = 2_400;

    // Decoding takes memory; this many at once in the whole service.
    private static readonly SemaphoreSlim AtOnce = new(2);

    /// <summary>A small picture of a photograph.</summary>
    public async Task<Outcome<DrawnPicture>> Thumbnail(Viewer viewer, long id, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await AttachmentIndex.Find(context, id, cancellation) is { Withdrawn: false } kept
            ? await Draw(kept, ThumbnailEdge, keepPng: false, cancellation)
            : AttachmentService.Unknown(id);
    }

    /// <summary>A photograph marked for the sheet, as the public will have it.</summary>
    public async Task<Outcome<PublicPhotograph>> PublicCopy(Viewer viewer, long id, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await AttachmentIndex.Find(context, id, cancellation) switch
        {
            null or { Withdrawn: true } => AttachmentService.Unknown(id),
            { ForSheet: false } => new Failure(FailureKind.Conflict, "Not for the sheet", $"Attachment {id} is not marked for the sheet, so there is no public copy of it."),
            var kept => (await Draw(kept, PublicEdge, keepPng: true, cancellation)).Map(picture => Published(kept, picture)),
        };
    }

    /// <summary>Every photograph of a run that is marked for the sheet, as the public will have it, in the order they were attached.</summary>
    public async Task<Outcome<IReadOnlyList<PublicPhotograph>>> ForSheet(Viewer viewer, string test, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var photographs = new List<PublicPhotograph>();
        foreach (var kept in (await AttachmentIndex.Of(context, AttachmentSubject.Run(test), cancellation)).Where(attachment => attachment.ForSheet))
        {
            var drawn = await Draw(kept, PublicEdge, keepPng: true, cancellation);
            if (drawn.Value is not { } picture)
            {
                return drawn.Failure! with { Detail = $"Attachment {kept.Id} is marked for the sheet. {drawn.Failure.Detail}" };
            }

            photographs.Add(Published(kept, picture));
        }

        return Outcome.List<PublicPhotograph>(photographs);
    }

    private static PublicPhotograph Published(KeptAttachment kept, DrawnPicture picture) => new(kept.Id, kept.Sha256, kept.AlternativeText!, picture);

    private async Task<Outcome<DrawnPicture>> Draw(KeptAttachment kept, int edge, bool keepPng, CancellationToken cancellation)
    {
        if (!kept.IsPicture || kept.Length > settings.Value.MaxPictureBytes)
        {
            return new Failure(FailureKind.Unreadable, "Picture cannot be drawn", kept.IsPicture
                ? $"The picture has {kept.Length} bytes; at most {settings.Value.MaxPictureBytes} are decoded."
                : $"Attachment {kept.Id} is no JPEG, PNG or WebP picture.");
        }

        await AtOnce.WaitAsync(cancellation);
        try
        {
            var bytes = new byte[kept.Length];
            await using var content = StoredFiles.Open(await contexts.CreateDbContextAsync(cancellation), kept.Sha256, kept.Length);
            await content.ReadExactlyAsync(bytes, cancellation);
            return PictureDecoder.Draw(bytes, edge, settings.Value.MaxPixels, keepPng);
        }
        finally
        {
            AtOnce.Release();
        }
    }
}
