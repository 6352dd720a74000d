using System.Buffers.Binary;
using System.Text;

namespace Toepan.Domain.Packages.Films;

/// <summary>
/// Frame rate of an MP4's first video track: samples over their durations (ISO/IEC 14496-12: boxes 4.2, media header 8.4.2, handler 8.4.3, decoding time
/// to sample 8.6.1.2).
/// </summary>
internal static class Mp4Rate
{
    private const int MostBoxes = 10_000;
    private const int MostMovieBytes = 64 << 20;

    public static double? Of(Stream film)
    {
        long at = 0;
        for (var box = 0; box < MostBoxes && FilmRate.Part(film, at, 8, 8) is { } head; box++)
        {
            var (length, name, skip) = Head(head, FilmRate.Part(film, at + 8, 8, 8), film.Length - at);
            if (name == "moov")
            {
                return FilmRate.Part(film, at + skip, length - skip, MostMovieBytes) is { } movie ? InMovie(movie) : null;
            }

            if (length < skip)
            {
                return null;
            }

            at += length;
        }

        return null;
    }

    private static double? InMovie(ReadOnlyMemory<byte> movie)
    {
        foreach (var media in Boxes(movie).Where(box => box.Name == "trak").Select(track => Child(track.Body, "mdia")).OfType<ReadOnlyMemory<byte>>())
        {
            if (Child(media, "hdlr") is { Length: >= 12 } handler && handler.Span.Slice(8, 4).SequenceEqual("vide"u8))
            {
                return InMedia(media);
            }
        }

        return null;
    }

    private static double? InMedia(ReadOnlyMemory<byte> media)
    {
        var table = Child(media, "minf") is { } information ? Child(information, "stbl") : null;
        var times = table is { } samples ? Child(samples, "stts") : null;
        return Child(media, "mdhd") is { Length: >= 24 } header && times is { Length: >= 8 } durations
            ? Rate(Timescale(header.Span), durations.Span)
            : null;
    }

    // Version 1 has 64-bit times before the time scale.
    private static double Timescale(ReadOnlySpan<byte> header) => BinaryPrimitives.ReadUInt32BigEndian(header[(header[0] == 1 ? 20 : 12)..]);

    private static double? Rate(double timescale, ReadOnlySpan<byte> times)
    {
        double samples = 0, ticks = 0;
        for (var at = 8; at + 8 <= times.Length; at += 8)
        {
            double count = BinaryPrimitives.ReadUInt32BigEndian(times[at..]);
            samples += count;
            ticks += count * BinaryPrimitives.ReadUInt32BigEndian(times[(at + 4)..]);
        }

        return ticks > 0 ? samples * timescale / ticks : null;
    }

    private static ReadOnlyMemory<byte>? Child(ReadOnlyMemory<byte> parent, string name)
    {
        foreach (var (found, body) in Boxes(parent))
        {
            if (found == name)
            {
                return body;
            }
        }

        return null;
    }

    private static IEnumerable<(string Name, ReadOnlyMemory<byte> Body)> Boxes(ReadOnlyMemory<byte> parent)
    {
        while (parent.Length >= 8)
        {
            var (length, name, head) = Head(parent.Span[..8], parent.Length >= 16 ? parent.Span.Slice(8, 8) : default, parent.Length);
            if (length < head || length > parent.Length)
            {
                yield break;
            }

            yield return (name, parent[head..(int)length]);
            parent = parent[(int)length..];
        }
    }

    // Length with its head, name, and length of the head: 1 = the length follows in 64 bits, 0 = to the end.
    private static (long Length, string Name, int Head) Head(ReadOnlySpan<byte> head, ReadOnlySpan<byte> large, long rest)
    {
        var length = (long)BinaryPrimitives.ReadUInt32BigEndian(head);
        var name = Encoding.Latin1.GetString(head.Slice(4, 4));
        return length switch
        {
            0 => (rest, name, 8),
            1 => (large.Length == 8 ? BinaryPrimitives.ReadInt64BigEndian(large) : -1, name, 16),
            _ => (length, name, 8),
        };
    }
}
