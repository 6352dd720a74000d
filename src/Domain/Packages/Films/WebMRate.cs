namespace Toepan.Domain.Packages.Films;

/// <summary>Frame rate of a WebM's first video track, where its DefaultDuration is given (RFC 9559, 5.1.4.1.13). Elements by RFC 8794.</summary>
internal static class WebMRate
{
    private const uint Segment = 0x18538067, Tracks = 0x1654AE6B, TrackEntry = 0xAE, TrackType = 0x83, DefaultDuration = 0x23E383, Cluster = 0x1F43B675;
    private const long Video = 1;
    private const double NanosecondsPerSecond = 1e9;
    private const int MostElements = 10_000;
    private const int MostHeadBytes = 12;

    public static double? Of(Stream film)
    {
        var (at, end) = (0L, film.Length);
        for (var element = 0; element < MostElements && Head(film, at, end) is { } head; element++)
        {
            switch (head.Id)
            {
                case Segment:
                    (at, end) = (head.Body, head.End);
                    continue;
                case Tracks:
                    return InTracks(film, head);
                case Cluster:
                    return null;
            }

            at = head.End;
        }

        return null;
    }

    private static double? InTracks(Stream film, Element tracks)
    {
        for (var at = tracks.Body; Head(film, at, tracks.End) is { } entry; at = entry.End)
        {
            if (entry.Id == TrackEntry && Number(film, entry, TrackType) == Video)
            {
                return Number(film, entry, DefaultDuration) is { } nanoseconds and > 0 ? NanosecondsPerSecond / nanoseconds : null;
            }
        }

        return null;
    }

    private static long? Number(Stream film, Element parent, uint id)
    {
        for (var at = parent.Body; Head(film, at, parent.End) is { } child; at = child.End)
        {
            if (child.Id == id && FilmRate.Part(film, child.Body, child.End - child.Body, sizeof(long)) is { } bytes)
            {
                return bytes.Aggregate(0L, (sum, next) => (sum << 8) | next);
            }
        }

        return null;
    }

    private static Element? Head(Stream film, long at, long end)
    {
        var bytes = FilmRate.Part(film, at, Math.Min(MostHeadBytes, Math.Min(end, film.Length) - at), MostHeadBytes);
        if (bytes is not { Length: >= 2 } || Width(bytes[0]) is not (> 0 and <= 4) || Width(bytes[0]) >= bytes.Length)
        {
            return null;
        }

        var name = Width(bytes[0]);
        var size = Width(bytes[name]);
        if (size == 0 || name + size > bytes.Length)
        {
            return null;
        }

        var id = bytes.Take(name).Aggregate(0u, (sum, next) => (sum << 8) | next);
        var length = bytes.Skip(name).Take(size).Aggregate(0L, (sum, next) => (sum << 8) | next) & ((1L << (7 * size)) - 1);
        var body = at + name + size;
        // All ones: to the end of what holds it.
        var last = length == (1L << (7 * size)) - 1 ? end : Math.Min(end, body + length);
        return new(id, body, last);
    }

    // Bytes of a number by the place of its first one bit; 0 = none.
    private static int Width(byte first) => first == 0 ? 0 : System.Numerics.BitOperations.LeadingZeroCount((uint)first << 24) + 1;

    private readonly record struct Element(uint Id, long Body, long End);
}
