using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages.Attachments;

/// <summary>
/// Makes a package's photographs, films and documents attachments of its run. Their bytes are stored expanded, once, so that a film can be sought; the very
/// same file in a later package of the run is the same attachment, with all that was said of it.
/// </summary>
internal static class PackageAttachmentIngest
{
    /// <summary>The context is in the transaction that takes the package in.</summary>
    /// <param name="spool">Where a film waits while its container is looked at.</param>
    public static async Task Write(
        ProgrammeDb context, UploadSpool spool, IncomingPackage incoming, string by, DateTimeOffset at, CancellationToken cancellation)
    {
        var (package, zip) = (incoming.Package, incoming.Upload.File);
        if (package.Attachments.Count == 0)
        {
            return;
        }

        var archive = new PackageAttachments(zip);
        var test = package.Programme.Test;
        var known = await context.Set<AttachmentRow>().Where(row => row.Test == test && row.PackagePath != null)
            .Select(row => row.PackagePath + "\n" + row.FileSha256).ToHashSetAsync(cancellation);

        var hashes = package.Attachments.Select(entry => entry.Sha256!).Distinct().ToList();
        var stored = await context.Set<StoredFileRow>().Where(row => hashes.Contains(row.Sha256)).Select(row => row.Sha256).ToHashSetAsync(cancellation);

        // In the order of their hashes, so that of two packages with the same files neither waits for what the other waits for.
        foreach (var attachment in package.Attachments.Where(entry => stored.Add(entry.Sha256!)).OrderBy(entry => entry.Sha256, StringComparer.Ordinal))
        {
            await Store(context, spool, () => archive.Open(attachment), attachment, at, cancellation);
        }

        context.AddRange(package.Attachments.Where(entry => !known.Contains(entry.Path + "\n" + entry.Sha256)).Select(entry => Row(test, entry, by, at)));
        await context.SaveChangesAsync(cancellation);
    }

    private static async Task Store(
        ProgrammeDb context, UploadSpool spool, Func<Stream> open, Attachment attachment, DateTimeOffset at, CancellationToken cancellation)
    {
        var file = new FileToStore(attachment.Sha256!, attachment.Length, Type(open), null);
        if (!FileSignature.IsFilm(file.MediaType))
        {
            await StoredFiles.Write(context, file, open, at, cancellation);
            return;
        }

        await using var film = spool.Create();
        await using (var content = open())
        {
            await content.CopyToAsync(film, cancellation);
        }

        await StoredFiles.Write(context, FileToStore.Of(film, file.Sha256), () => new Unowned(film), at, cancellation);
    }

    private static string Type(Func<Stream> open)
    {
        var head = new byte[FileSignature.Length];
        using var content = open();
        return FileSignature.Of(head.AsSpan(0, content.ReadAtLeast(head, head.Length, throwOnEndOfStream: false)));
    }

    private static AttachmentRow Row(string test, Attachment attachment, string by, DateTimeOffset at) => new()
    {
        Test = test, FileSha256 = attachment.Sha256!, Name = attachment.Path[(attachment.Path.LastIndexOf('/') + 1)..], PackagePath = attachment.Path,
        Notes = [new() { Version = 1, Act = AttachmentAct.Attached, Kind = Kind(attachment.Path), By = by, At = at }],
    };

    private static AttachmentKind Kind(string path) => path[..Math.Max(0, path.IndexOf('/', StringComparison.Ordinal))].ToUpperInvariant() switch
    {
        "PHOTO" => AttachmentKind.Photograph,
        "MOVIE" => AttachmentKind.Film,
        "DOCUMENT" or "REPORT" or "DIAGRAM" => AttachmentKind.Document,
        _ => AttachmentKind.Other,
    };
}
