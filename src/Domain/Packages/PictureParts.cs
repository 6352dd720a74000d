using System.Buffers.Binary;
using System.Text;

namespace Toepan.Domain.Packages;

/// <summary>
/// The parts of a JPEG (ISO/IEC 10918-1, annex B) or PNG (ISO/IEC 15948, 5.3) file, and the same file with nothing in it but what its pixels need: no
/// application segment but JFIF, no comment, no ancillary chunk but transparency, nothing after the end.
/// </summary>
public static class PictureParts
{
    private const int PngSignature = 8;
    private const int ChunkFrame = 12;
    private const byte App0 = 0xE0;
    private const byte StartOfScan = 0xDA;
    private const byte EndOfImage = 0xD9;
    private static readonly string[] Needed = ["IHDR", "PLTE", "tRNS", "IDAT", "IEND"];

    /// <summary>The bytes without metadata.</summary>
    /// <exception cref="InvalidDataException">It is no such file, or ends early.</exception>
    public static byte[] Bare(byte[] picture) => FileSignature.Of(picture) switch
    {
        FileSignature.Jpeg => BareJpeg(picture),
        FileSignature.Png => BarePng(picture),
        var other => throw new InvalidDataException($"A picture of type {other} has no parts known here."),
    };

    private static byte[] BarePng(ReadOnlySpan<byte> picture)
    {
        using var bare = new MemoryStream(picture.Length);
        bare.Write(picture[..PngSignature]);
        for (var at = PngSignature; ;)
        {
            var length = at + ChunkFrame <= picture.Length ? BinaryPrimitives.ReadUInt32BigEndian(picture[at..]) : uint.MaxValue;
            if (length > picture.Length - at - ChunkFrame)
            {
                throw new InvalidDataException("The PNG ends within a chunk.");
            }

            var (name, whole) = (Encoding.ASCII.GetString(picture.Slice(at + 4, 4)), ChunkFrame + (int)length);
            if (Array.IndexOf(Needed, name) >= 0)
            {
                bare.Write(picture.Slice(at, whole));
            }

            at += whole;
            if (name == "IEND")
            {
                return bare.ToArray();
            }
        }
    }

    private static byte[] BareJpeg(ReadOnlySpan<byte> picture)
    {
        using var bare = new MemoryStream(picture.Length);
        bare.Write(picture[..2]);
        for (var at = 2; ;)
        {
            var (marker, end) = Segment(picture, at);
            if (marker == EndOfImage)
            {
                bare.Write([0xFF, EndOfImage]);
                return bare.ToArray();
            }

            if (marker == StartOfScan)
            {
                end = EndOfScan(picture, end);
            }

            if (IsNeeded(marker, picture[at..end]))
            {
                bare.Write(picture[at..end]);
            }

            at = end;
        }
    }

    private static (byte Marker, int End) Segment(ReadOnlySpan<byte> picture, int at)
    {
        if (at + 2 <= picture.Length && picture[at] == 0xFF && picture[at + 1] == EndOfImage)
        {
            return (EndOfImage, at + 2);
        }

        var end = at + 4 <= picture.Length && picture[at] == 0xFF ? at + 2 + BinaryPrimitives.ReadUInt16BigEndian(picture[(at + 2)..]) : int.MaxValue;
        return end <= picture.Length ? (picture[at + 1], end) : throw new InvalidDataException("The JPEG ends within a segment.");
    }

    // Entropy-coded data goes on to the next marker that is neither a stuffed zero nor a restart.
    private static int EndOfScan(ReadOnlySpan<byte> picture, int at)
    {
        for (; at + 1 < picture.Length; at++)
        {
            if (picture[at] == 0xFF && picture[at + 1] is not (0 or (>= 0xD0 and <= 0xD7)))
            {
                return at;
            }
        }

        throw new InvalidDataException("The JPEG ends within a scan.");
    }

    // JFIF without a thumbnail stays (ITU-T T.871, 10.1); every other application segment and the comment go.
    private static bool IsNeeded(byte marker, ReadOnlySpan<byte> segment) => marker switch
    {
        App0 => segment.Length == 18 && segment[4..].StartsWith("JFIF\0"u8),
        > App0 and <= 0xEF or 0xFE => false,
        _ => true,
    };
}
