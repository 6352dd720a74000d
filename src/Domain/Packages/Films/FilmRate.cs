namespace Toepan.Domain.Packages.Films;

/// <summary>How many frames a film's container shows in a second of the player's clock, where it says so.</summary>
public static class FilmRate
{
    /// <summary>Frames a second to 6 significant digits; null where the container does not say, is damaged, or holds no video.</summary>
    /// <param name="film">Seekable stream over the whole file; read here and there, never as a whole.</param>
    /// <param name="mediaType">What <see cref="FileSignature"/> found.</param>
    public static double? Of(Stream film, string mediaType)
    {
        var rate = mediaType switch
        {
            FileSignature.Mp4 => Mp4Rate.Of(film),
            FileSignature.WebM => WebMRate.Of(film),
            _ => null,
        };
        return rate is > 0 and <= FilmTiming.FastestFramesPerSecond ? double.Parse(rate.Value.ToString("G6", System.Globalization.CultureInfo.InvariantCulture), System.Globalization.CultureInfo.InvariantCulture) : null;
    }

    /// <summary>Bytes of a part of a file; null where it is not all there or longer than <paramref name="most"/>.</summary>
    internal static byte[]? Part(Stream film, long at, long length, int most)
    {
        if (length < 0 || length > most || at < 0 || at + length > film.Length)
        {
            return null;
        }

        var bytes = new byte[length];
        film.Position = at;
        film.ReadExactly(bytes);
        return bytes;
    }
}
