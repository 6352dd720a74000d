using Toepan.Api.Packages.Tables;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages.Attachments;

/// <summary>A photograph, film, document or other file of a run or a specimen.</summary>
/// <param name="Id">Number.</param>
/// <param name="Subject">What it belongs to.</param>
/// <param name="Name">Name it came with.</param>
/// <param name="MediaType">What its bytes are.</param>
/// <param name="Length">Bytes.</param>
/// <param name="Sha256">Lower-case hex SHA-256 of the bytes.</param>
/// <param name="PackagePath">Entry name in the package that brought it; null where it was attached afterwards.</param>
/// <param name="Facts">What is said of it.</param>
/// <param name="AlternativeText">Words for who cannot see it; set exactly where it may be copied to the sheet.</param>
/// <param name="Withdrawn">Whether it is hidden.</param>
/// <param name="Acts">What was done to it, earliest first; their number is its version.</param>
public sealed record KeptAttachment(
    long Id, AttachmentSubject Subject, string Name, string MediaType, long Length, string Sha256, string? PackagePath, AttachmentFacts Facts,
    string? AlternativeText, bool Withdrawn, IReadOnlyList<AttachmentEvent> Acts)
{
    public int Version => Acts.Count;

    public bool ForSheet => AlternativeText is not null && !Withdrawn;

    /// <summary>Whether it is a picture that can be shown.</summary>
    public bool IsPicture => FileSignature.IsPicture(MediaType);

    public bool IsFilm => FileSignature.IsFilm(MediaType);

    /// <summary>What to call it: its caption, else its name.</summary>
    public string Title => Facts.Caption ?? Name;

    internal static KeptAttachment Of(AttachmentRow row)
    {
        var notes = row.Notes.OrderBy(note => note.Version).ToList();
        var last = notes[^1];
        return new(
            row.Id, new(row.Test, row.SpecimenId), row.Name, row.File!.MediaType, row.File.Length, row.FileSha256, row.PackagePath,
            new(last.Kind, last.Caption, last.Camera, last.TakenAt, last.Moment), last.AlternativeText, last.Withdrawn,
            [.. notes.Select(note => new AttachmentEvent(note.Act, note.By, note.At, note.Reason))]);
    }
}

/// <summary>One thing done to an attachment.</summary>
public sealed record AttachmentEvent(AttachmentAct Act, string By, DateTimeOffset At, string? Reason);

/// <summary>An attachment after an upload, and whether the upload made it.</summary>
public sealed record AttachResult(KeptAttachment Attachment, bool Created);
