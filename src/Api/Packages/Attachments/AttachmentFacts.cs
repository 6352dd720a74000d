using System.Globalization;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages.Attachments;

/// <summary>What an attachment is to its reader.</summary>
public enum AttachmentKind
{
    Photograph,
    Film,
    Document,
    Other,
}

/// <summary>When it was taken, by the crash.</summary>
public enum CrashMoment
{
    Before,
    During,
    After,
}

/// <summary>What was done to an attachment.</summary>
public enum AttachmentAct
{
    Attached,
    Described,
    MarkedForSheet,
    TakenOffSheet,
    Withdrawn,
    Restored,
}

/// <summary>What an attachment belongs to: a run or a specimen.</summary>
public sealed record AttachmentSubject(string? Test, long? Specimen)
{
    public static AttachmentSubject Run(string test) => new(test, null);

    public static AttachmentSubject Of(long specimen) => new(null, specimen);

    /// <summary>Kind and key, as the audit names it.</summary>
    public string Key => Test is { } test ? $"test/{test}" : string.Create(CultureInfo.InvariantCulture, $"specimen/{Specimen}");
}

/// <summary>What people say of an attachment.</summary>
/// <param name="Kind">Kind; null = as its bytes show.</param>
/// <param name="Caption">Caption.</param>
/// <param name="Camera">Camera.</param>
/// <param name="TakenAt">When it was taken.</param>
/// <param name="Moment">Before, during or after the crash.</param>
public sealed record AttachmentFacts(AttachmentKind? Kind, string? Caption, string? Camera, DateTimeOffset? TakenAt, CrashMoment? Moment)
{
    public const int LongestCaption = 500;
    public const int LongestCamera = 100;

    public static AttachmentFacts None { get; } = new(null, null, null, null, null);

    internal Failure? Check() => Optional("The caption", Caption, LongestCaption) ?? Optional("The camera", Camera, LongestCamera);

    /// <summary>The kind a file of a media type has where nobody says otherwise.</summary>
    internal static AttachmentKind KindOf(string mediaType) => mediaType switch
    {
        _ when FileSignature.IsPicture(mediaType) => AttachmentKind.Photograph,
        _ when FileSignature.IsFilm(mediaType) => AttachmentKind.Film,
        FileSignature.Pdf => AttachmentKind.Document,
        _ => AttachmentKind.Other,
    };

    private static Failure? Optional(string what, string? text, int longest) => string.IsNullOrWhiteSpace(text) ? null : Texts.Check(what, text, longest);
}
