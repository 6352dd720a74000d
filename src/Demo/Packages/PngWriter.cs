using System.Buffers.Binary;
using System.IO.Compression;
using System.IO.Hashing;
using System.Text;

namespace Toepan.Demo.Packages;

/// <summary>Pixels → PNG (ISO/IEC 15948): 8-bit RGB, no filter.</summary>
internal static class PngWriter
{
    private const int BytesAPixel = 3;

    public static byte[] Write(byte[] rgb, int width)
    {
        var height = rgb.Length / width / BytesAPixel;
        using var png = new MemoryStream();
        png.Write([0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A]);
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        (header[8], header[9]) = (8, 2);
        Chunk(png, "IHDR", header);
        Chunk(png, "IDAT", Packed(rgb, width * BytesAPixel));
        Chunk(png, "IEND", []);
        return png.ToArray();
    }

    private static byte[] Packed(byte[] rgb, int stride)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            for (var at = 0; at < rgb.Length; at += stride)
            {
                zlib.WriteByte(0);
                zlib.Write(rgb, at, stride);
            }
        }

        return packed.ToArray();
    }

    private static void Chunk(MemoryStream png, string name, byte[] body)
    {
        var chunk = new byte[body.Length + 12];
        BinaryPrimitives.WriteInt32BigEndian(chunk, body.Length);
        Encoding.ASCII.GetBytes(name, chunk.AsSpan(4));
        body.CopyTo(chunk, 8);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(chunk.Length - 4), Crc32.HashToUInt32(chunk.AsSpan(4, body.Length + 4)));
        png.Write(chunk);
    }
}
