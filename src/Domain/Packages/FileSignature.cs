using System.Text;

namespace Toepan.Domain.Packages;

/// <summary>
/// What a file is by its first bytes, whatever its name or sender says. Only these few are ever shown in a browser; anything else is
/// <see cref="Unknown"/> and offered for download. Signatures: JPEG ISO/IEC 10918-1, B.1.1.3; PNG ISO/IEC 15948, 5.2; WebP RFC 9649; MP4 ISO/IEC 14496-12,
/// 4.3 (brands from the MP4 registration authority, from memory); WebM/Matroska RFC 9559; PDF ISO 32000-1, 7.5.2.
/// </summary>
public static class FileSignature
{
    public const string Jpeg = "image/jpeg";
    public const string Png = "image/png";
    public const string WebP = "image/webp";
    public const string Mp4 = "video/mp4";
    public const string WebM = "video/webm";
    public const string Pdf = "application/pdf";
    public const string Unknown = "application/octet-stream";

    /// <summary>Enough of a file's beginning to tell.</summary>
    public const int Length = 64;

    private const int BrandOffset = 8;
    private const int BrandLength = 4;
    private static readonly string[] Mp4Brands = ["isom", "iso2", "iso3", "iso4", "iso5", "iso6", "iso7", "iso8", "iso9", "mp41", "mp42", "avc1", "dash", "M4V ", "M4VH", "M4VP", "MSNV"];

    /// <summary>Whether a browser may show it rather than save it.</summary>
    public static bool IsShown(string mediaType) => mediaType != Unknown;

    public static bool IsPicture(string mediaType) => mediaType is Jpeg or Png or WebP;

    public static bool IsFilm(string mediaType) => mediaType is Mp4 or WebM;

    /// <summary>Media type of a file that begins so.</summary>
    public static string Of(ReadOnlySpan<byte> head) => head switch
    {
        _ when head.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]) => Jpeg,
        _ when head.StartsWith((ReadOnlySpan<byte>)[0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]) => Png,
        _ when head.StartsWith("RIFF"u8) && head.Length >= 12 && head[8..].StartsWith("WEBP"u8) => WebP,
        _ when IsMp4(head) => Mp4,
        _ when head.StartsWith((ReadOnlySpan<byte>)[0x1A, 0x45, 0xDF, 0xA3]) && HasWebMDocType(head) => WebM,
        _ when head.StartsWith("%PDF-"u8) => Pdf,
        _ => Unknown,
    };

    private static bool IsMp4(ReadOnlySpan<byte> head) =>
        head.Length >= BrandOffset + BrandLength && head[4..].StartsWith("ftyp"u8)
        && Array.IndexOf(Mp4Brands, Encoding.ASCII.GetString(head.Slice(BrandOffset, BrandLength))) >= 0;

    // DocType (0x4282) with a length of one byte, then the text.
    private static bool HasWebMDocType(ReadOnlySpan<byte> head) =>
        head.IndexOf((ReadOnlySpan<byte>)[0x42, 0x82, 0x84, (byte)'w', (byte)'e', (byte)'b', (byte)'m']) >= 0;
}
