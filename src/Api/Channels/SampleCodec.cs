using System.Buffers;
using System.IO.Compression;
using System.Runtime.InteropServices;

namespace Toepan.Api.Channels;

/// <summary>
/// Doubles ↔ compressed bytes, bit for bit (NaN payloads and −0 included). Form: one version byte, then zlib over eight planes: all
/// lowest bytes first, all sign and exponent bytes last, each sample little-endian. Neighbouring samples share their high bytes, so the planes compress.
/// </summary>
public static class SampleCodec
{
    private const byte Version = 1;

    public static byte[] Encode(ReadOnlySpan<double> samples)
    {
        var raw = MemoryMarshal.AsBytes(samples);
        var planes = ArrayPool<byte>.Shared.Rent(raw.Length);
        try
        {
            for (var plane = 0; plane < sizeof(double); plane++)
            {
                var target = planes.AsSpan(plane * samples.Length, samples.Length);
                for (var i = 0; i < target.Length; i++)
                {
                    target[i] = raw[(i * sizeof(double)) + plane];
                }
            }

            using var packed = new MemoryStream();
            packed.WriteByte(Version);
            using (var zlib = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true))
            {
                zlib.Write(planes, 0, raw.Length);
            }

            return packed.ToArray();
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(planes);
        }
    }

    /// <summary>The <paramref name="count"/> samples that were encoded.</summary>
    /// <exception cref="InvalidDataException">The bytes are of another version or another count.</exception>
    public static double[] Decode(byte[] bytes, int count)
    {
        if (bytes.Length == 0 || bytes[0] != Version)
        {
            throw new InvalidDataException("Stored samples are of an unknown version.");
        }

        var planes = new byte[checked(count * sizeof(double))];
        using (var zlib = new ZLibStream(new MemoryStream(bytes, 1, bytes.Length - 1), CompressionMode.Decompress))
        {
            zlib.ReadExactly(planes);
        }

        var samples = new double[count];
        var raw = MemoryMarshal.AsBytes(samples.AsSpan());
        for (var plane = 0; plane < sizeof(double); plane++)
        {
            var source = planes.AsSpan(plane * count, count);
            for (var i = 0; i < source.Length; i++)
            {
                raw[(i * sizeof(double)) + plane] = source[i];
            }
        }

        return samples;
    }
}
