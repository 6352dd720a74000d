using System.Buffers.Binary;
using System.Text;

namespace Toepan.Api.Tests.Embargo;

/// <summary>A small photograph (16 × 12, a grey gradient, drawn with ImageMagick for this purpose) with a mark in its Exif and comment segments.</summary>
internal static class PlantedPhotograph
{
    private const int ImageDescription = 0x010E; // Exif 2.3, 4.6.4
    private const int Ascii = 2;
    private static readonly byte[] Plain = Convert.FromBase64String(
        "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAA0JCgsKCA0LCgsODg0PEyAVExISEyccHhcgLikxMC4pLSwzOko+MzZGNywtQFdBRkxOUlNSMj5aYVpQYEpRUk//wAALCAAMABABAREA/8QAFgABAQEAAAAAAAAAAAAAAAAAAAUG/8QAGRAAAQUAAAAAAAAAAAAAAAAAAAMUFVJi/9oACAEBAAA/AKMzoTOjCulrB0tY/9k=");

    public static byte[] With(string mark) =>
        [.. Plain[..2], .. Segment(0xE1, Exif(mark)), .. Segment(0xFE, Encoding.ASCII.GetBytes(mark)), .. Plain[2..]];

    private static byte[] Segment(byte marker, byte[] content)
    {
        var length = new byte[2];
        BinaryPrimitives.WriteUInt16BigEndian(length, (ushort)(content.Length + 2));
        return [0xFF, marker, .. length, .. content];
    }

    /// <summary>TIFF header and one directory with one entry, big-endian.</summary>
    private static byte[] Exif(string mark)
    {
        var text = Encoding.ASCII.GetBytes(mark + '\0');
        var tiff = new byte[26 + text.Length];
        "MM"u8.CopyTo(tiff);
        BinaryPrimitives.WriteUInt16BigEndian(tiff.AsSpan(2), 42);
        BinaryPrimitives.WriteUInt32BigEndian(tiff.AsSpan(4), 8);
        BinaryPrimitives.WriteUInt16BigEndian(tiff.AsSpan(8), 1);
        BinaryPrimitives.WriteUInt16BigEndian(tiff.AsSpan(10), ImageDescription);
        BinaryPrimitives.WriteUInt16BigEndian(tiff.AsSpan(12), Ascii);
        BinaryPrimitives.WriteUInt32BigEndian(tiff.AsSpan(14), (uint)text.Length);
        BinaryPrimitives.WriteUInt32BigEndian(tiff.AsSpan(18), 26);
        text.CopyTo(tiff, 26);
        return [.. "Exif\0\0"u8, .. tiff];
    }
}
