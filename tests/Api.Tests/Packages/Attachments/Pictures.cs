using System.Buffers.Binary;
using System.IO.Hashing;
using System.Text;
using SkiaSharp;

namespace Toepan.Api.Tests.Packages.Attachments;

/// <summary>
/// Pictures made here, with marks planted in every place metadata can stand: segments and chunks written by hand from the published layouts (JPEG: ISO/IEC
/// 10918-1 annex B; Exif 2.32; PNG: ISO/IEC 15948), not by the code under test.
/// </summary>
internal static class Pictures
{
    /// <summary>Every planted mark begins so.</summary>
    public const string Mark = "MARK7c1f";

    /// <summary>60 × 40, left half dark, right half light, top left corner red; as a camera would store it on its side where asked.</summary>
    public static byte[] Jpeg(ushort orientation = 1) => JpegWithMarks(Encode(Scene(60, 40), SKEncodedImageFormat.Jpeg), orientation);

    public static byte[] Png()
    {
        var plain = Encode(Scene(60, 40), SKEncodedImageFormat.Png);
        using var marked = new MemoryStream();
        marked.Write(plain.AsSpan(0, 33)); // signature and IHDR
        marked.Write(Chunk("tEXt", $"Author\0{Mark} tEXt"));
        marked.Write(Chunk("iTXt", $"Comment\0\0\0en\0\0{Mark} iTXt"));
        marked.Write(Chunk("eXIf", $"MM\0*{Mark} eXIf"));
        marked.Write(Chunk("tIME", "1234567"));
        marked.Write(plain.AsSpan(33));
        marked.Write(Encoding.ASCII.GetBytes($"{Mark} after the end"));
        return marked.ToArray();
    }

    /// <summary>A PNG of a few hundred bytes that claims to be enormous.</summary>
    public static byte[] Bomb()
    {
        var png = Encode(Scene(8, 8), SKEncodedImageFormat.Png);
        BinaryPrimitives.WriteInt32BigEndian(png.AsSpan(16), 60_000);
        BinaryPrimitives.WriteInt32BigEndian(png.AsSpan(20), 60_000);
        BinaryPrimitives.WriteUInt32BigEndian(png.AsSpan(29), Crc(png.AsSpan(12, 17)));
        return png;
    }

    public static byte[] WebP() => Encode(Scene(60, 40), SKEncodedImageFormat.Webp);

    public static bool Holds(byte[] bytes, string text) =>
        bytes.AsSpan().IndexOf(Encoding.ASCII.GetBytes(text)) >= 0 || bytes.AsSpan().IndexOf(Encoding.Unicode.GetBytes(text)) >= 0;

    private static SKBitmap Scene(int width, int height)
    {
        var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        using var dark = new SKPaint { Color = SKColors.Black };
        using var red = new SKPaint { Color = SKColors.Red };
        canvas.DrawRect(0, 0, width / 2f, height, dark);
        canvas.DrawRect(0, 0, width / 4f, height / 4f, red);
        return bitmap;
    }

    private static byte[] Encode(SKBitmap bitmap, SKEncodedImageFormat format)
    {
        using (bitmap)
        using (var data = bitmap.Encode(format, 95))
        {
            return data.ToArray();
        }
    }

    private static byte[] JpegWithMarks(byte[] plain, ushort orientation)
    {
        using var marked = new MemoryStream();
        marked.Write(plain.AsSpan(0, 2));
        marked.Write(Segment(0xE1, [.. "Exif\0\0"u8, .. Exif(orientation)]));
        marked.Write(Segment(0xE1, Encoding.ASCII.GetBytes($"http://ns.adobe.com/xap/1.0/\0<x:xmpmeta>{Mark} xmp</x:xmpmeta>")));
        marked.Write(Segment(0xE2, Encoding.ASCII.GetBytes($"MPF\0{Mark} app2")));
        marked.Write(Segment(0xED, Encoding.ASCII.GetBytes($"Photoshop 3.0\08BIM{Mark} iptc")));
        marked.Write(Segment(0xFE, Encoding.ASCII.GetBytes($"{Mark} comment")));
        marked.Write(plain.AsSpan(2));
        marked.Write(Encoding.ASCII.GetBytes($"{Mark} after the end"));
        return marked.ToArray();
    }

    // TIFF, big-endian: orientation, and the artist as the mark.
    private static byte[] Exif(ushort orientation)
    {
        var artist = Encoding.ASCII.GetBytes($"{Mark} exif\0");
        var tiff = new byte[8 + 2 + 24 + 4 + artist.Length];
        "MM\0*"u8.CopyTo(tiff);
        BinaryPrimitives.WriteUInt32BigEndian(tiff.AsSpan(4), 8);
        BinaryPrimitives.WriteUInt16BigEndian(tiff.AsSpan(8), 2);
        Entry(tiff.AsSpan(10), 0x0112, 3, 1, (uint)orientation << 16);
        Entry(tiff.AsSpan(22), 0x013B, 2, (uint)artist.Length, 38);
        artist.CopyTo(tiff, 38);
        return tiff;
    }

    private static void Entry(Span<byte> at, ushort tag, ushort type, uint count, uint value)
    {
        BinaryPrimitives.WriteUInt16BigEndian(at, tag);
        BinaryPrimitives.WriteUInt16BigEndian(at[2..], type);
        BinaryPrimitives.WriteUInt32BigEndian(at[4..], count);
        BinaryPrimitives.WriteUInt32BigEndian(at[8..], value);
    }

    private static byte[] Segment(byte marker, byte[] body)
    {
        var segment = new byte[4 + body.Length];
        (segment[0], segment[1]) = (0xFF, marker);
        BinaryPrimitives.WriteUInt16BigEndian(segment.AsSpan(2), (ushort)(body.Length + 2));
        body.CopyTo(segment, 4);
        return segment;
    }

    private static byte[] Chunk(string name, string text)
    {
        var body = Encoding.Latin1.GetBytes(name + text);
        var chunk = new byte[body.Length + 8];
        BinaryPrimitives.WriteInt32BigEndian(chunk, text.Length);
        body.CopyTo(chunk, 4);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(chunk.Length - 4), Crc(body));
        return chunk;
    }

    private static uint Crc(ReadOnlySpan<byte> bytes) => Crc32.HashToUInt32(bytes);
}
