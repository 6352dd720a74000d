namespace Toepan.Domain.Packages;

/// <summary>
/// When a frame of a film was. Frames count from 0. A frame's time from contact is (frame − zero frame)/recorded frames per second; a player that shows
/// p frames per second of its own clock shows frame ⌊clock · p⌋.
/// </summary>
/// <param name="File">Entry name within Movie/, or the whole entry name.</param>
/// <param name="Camera">Camera, or null.</param>
/// <param name="FramesPerSecond">Frames recorded a second.</param>
/// <param name="TimeZeroFrame">The frame of contact; may lie outside the film.</param>
/// <param name="PlaybackFramesPerSecond">Frames a second of the player's clock; null = as the file's container says.</param>
/// <param name="Line">Line in films.csv; 0 elsewhere.</param>
public sealed record FilmTiming(
    string File, string? Camera, double FramesPerSecond, double TimeZeroFrame, double? PlaybackFramesPerSecond, int Line)
{
    /// <summary>Fastest film believed, frames a second (our own bound).</summary>
    public const double FastestFramesPerSecond = 10_000_000;

    /// <summary>Furthest frame believed from the first (our own bound).</summary>
    public const double FurthestFrame = 1_000_000_000;

    /// <summary>Time of a frame, ms from contact.</summary>
    public double TimeMs(double frame) => (frame - TimeZeroFrame) / FramesPerSecond * 1000;

    /// <summary>The frame shown at a time, ms from contact, with its fraction.</summary>
    public double Frame(double timeMs) => (timeMs / 1000 * FramesPerSecond) + TimeZeroFrame;
}
