using System.Text;
using System.Text.Unicode;

namespace Toepan.Domain.Packages.Text;

/// <summary>
/// Bytes of a text file and the encoding its text is in: UTF-8 where a byte-order mark says so or where the whole file is valid UTF-8, else
/// ISO 8859-1. ISO/TS 13499 asks for ISO 8859-1, its later editions allow UTF-8 (from memory).
/// </summary>
internal readonly struct TextFile
{
    private static readonly byte[] Utf8Mark = [0xEF, 0xBB, 0xBF];

    private readonly Encoding encoding;

    private TextFile(ReadOnlyMemory<byte> bytes, Encoding encoding) => (Bytes, this.encoding) = (bytes, encoding);

    /// <summary>The bytes without a byte-order mark.</summary>
    public ReadOnlyMemory<byte> Bytes { get; }

    /// <summary>False, with a reason, where the bytes are UTF-16 or hold NUL: no text this format knows.</summary>
    public static bool TryOpen(ReadOnlyMemory<byte> bytes, out TextFile file, out string? reason)
    {
        var span = bytes.Span;
        reason = span is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] ? "is UTF-16; ISO 8859-1 and UTF-8 are read"
            : span.Contains((byte)0) ? "holds a NUL byte and is no text file"
            : null;
        var marked = span.StartsWith(Utf8Mark);
        var text = marked ? bytes[Utf8Mark.Length..] : bytes;
        file = new TextFile(text, marked || Utf8.IsValid(text.Span) ? Encoding.UTF8 : Encoding.Latin1);
        return reason is null;
    }

    /// <summary>Text of some of the bytes; a byte that is no UTF-8 in a file marked as UTF-8 becomes U+FFFD.</summary>
    public string Decode(ReadOnlySpan<byte> part) => encoding.GetString(part);
}
