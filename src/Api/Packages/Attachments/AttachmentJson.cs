namespace Toepan.Api.Packages.Attachments;

/// <summary>An attachment as the contract writes it.</summary>
public sealed record AttachmentJson(
    long Id, string? Test, long? Specimen, string Name, AttachmentKind Kind, string MediaType, long Length, string Sha256, string? PackagePath,
    string? Caption, string? Camera, DateTimeOffset? TakenAt, CrashMoment? Moment, bool ForSheet, string? AlternativeText, bool Withdrawn, int Version,
    IReadOnlyList<AttachmentEvent> Acts)
{
    public static AttachmentJson Of(KeptAttachment kept) => new(
        kept.Id, kept.Subject.Test, kept.Subject.Specimen, kept.Name, kept.Facts.Kind ?? AttachmentKind.Other, kept.MediaType, kept.Length, kept.Sha256,
        kept.PackagePath, kept.Facts.Caption, kept.Facts.Camera, kept.Facts.TakenAt, kept.Facts.Moment, kept.ForSheet, kept.AlternativeText,
        kept.Withdrawn, kept.Version, kept.Acts);
}

/// <summary>What is said of an attachment, and the version last read.</summary>
/// <param name="Kind">photograph, film, document or other; left out: as it is.</param>
/// <param name="Caption">Caption.</param>
/// <param name="Camera">Camera.</param>
/// <param name="TakenAt">When it was taken.</param>
/// <param name="Moment">before, during or after the crash.</param>
/// <param name="Version">The version last read.</param>
public sealed record AttachmentChangeJson(string? Kind, string? Caption, string? Camera, DateTimeOffset? TakenAt, string? Moment, uint? Version);

/// <summary>A reason, and the version last read.</summary>
public sealed record AttachmentReasonJson(string? Reason, uint? Version);

/// <summary>Words for who cannot see it, which put it on the sheet; empty takes it off.</summary>
public sealed record SheetMarkJson(string? AlternativeText, uint? Version);

/// <summary>A film as the contract writes it; times by (frame − timeZeroFrame)/framesPerSecond.</summary>
public sealed record FilmJson(
    AttachmentJson Attachment, string? Camera, double? FramesPerSecond, double? TimeZeroFrame, double? PlaybackFramesPerSecond,
    double? ContainerFramesPerSecond, string? SetBy, DateTimeOffset? SetAt, int Version)
{
    public static FilmJson Of(Film film) => new(
        AttachmentJson.Of(film.Attachment), film.Camera, film.Timing?.FramesPerSecond, film.Timing?.TimeZeroFrame, film.PlaybackFramesPerSecond,
        film.ContainerFramesPerSecond, film.SetBy, film.SetAt, film.Version);
}

/// <summary>Frame rate and time zero to set, and the version last read.</summary>
public sealed record FilmTimesJson(double? FramesPerSecond, double? TimeZeroFrame, double? PlaybackFramesPerSecond, string? Reason, uint? Version);
