using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Packages.Attachments;

/// <summary>The bytes of an attachment, byte for byte as they came; the caller disposes the stream.</summary>
public sealed record AttachmentBytes(KeptAttachment Attachment, Stream Content);

/// <summary>Attachments out. A withdrawn one is not given.</summary>
public sealed class AttachmentContent(IDbContextFactory<ProgrammeDb> contexts)
{
    public async Task<Outcome<AttachmentBytes>> Open(Viewer viewer, long id, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await AttachmentIndex.Find(context, id, cancellation) is { Withdrawn: false } kept
            ? new AttachmentBytes(kept, StoredFiles.Open(await contexts.CreateDbContextAsync(cancellation), kept.Sha256, kept.Length))
            : AttachmentService.Unknown(id);
    }
}
