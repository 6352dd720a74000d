using Toepan.Domain.Packages;

namespace Toepan.Api.Packages.Attachments;

/// <summary>A film of a run with what is known of its frames.</summary>
/// <param name="Attachment">The film.</param>
/// <param name="Timing">Its frames in time; null = not known.</param>
/// <param name="ContainerFramesPerSecond">Frames a second of the player's clock by the file's container; null where it does not say.</param>
/// <param name="SetBy">Who set the timing on the page; null where the package says it, or nobody.</param>
/// <param name="SetAt">When.</param>
/// <param name="Version">How often it was set on the page; the next change names it.</param>
public sealed record Film(
    KeptAttachment Attachment, FilmTiming? Timing, double? ContainerFramesPerSecond, string? SetBy, DateTimeOffset? SetAt, int Version)
{
    /// <summary>Films slower than this are played as fast as they were recorded unless something says otherwise.</summary>
    private const double FastestOrdinaryFramesPerSecond = 60;

    public string? Camera => Attachment.Facts.Camera ?? Timing?.Camera;

    /// <summary>Frames a second of the player's clock: as set, else by the container, else as recorded where that is an ordinary speed; null = not known.</summary>
    public double? PlaybackFramesPerSecond =>
        Timing?.PlaybackFramesPerSecond ?? ContainerFramesPerSecond ?? (Timing?.FramesPerSecond <= FastestOrdinaryFramesPerSecond ? Timing.FramesPerSecond : null);

    /// <summary>Whether its frames can be told in time from contact.</summary>
    public bool Timed => Timing is not null && PlaybackFramesPerSecond is not null;
}

/// <summary>Frame rate and time zero to set.</summary>
/// <param name="FramesPerSecond">Frames recorded a second.</param>
/// <param name="TimeZeroFrame">The frame of contact, counted from 0.</param>
/// <param name="PlaybackFramesPerSecond">Frames a second of the player's clock; null = as the container says.</param>
public sealed record FilmTimes(double FramesPerSecond, double TimeZeroFrame, double? PlaybackFramesPerSecond)
{
    internal Failure? Check() =>
        Rate("framesPerSecond", FramesPerSecond) ?? (PlaybackFramesPerSecond is { } playback ? Rate("playbackFramesPerSecond", playback) : null)
        ?? (double.IsFinite(TimeZeroFrame) && Math.Abs(TimeZeroFrame) <= FilmTiming.FurthestFrame ? null
            : Failure.BadRequest(FormattableString.Invariant($"timeZeroFrame is {TimeZeroFrame}; it lies within {FilmTiming.FurthestFrame} frames of the first.")));

    private static Failure? Rate(string what, double rate) => rate is > 0 and <= FilmTiming.FastestFramesPerSecond ? null
        : Failure.BadRequest(FormattableString.Invariant($"{what} is {rate}; it lies above 0 and up to {FilmTiming.FastestFramesPerSecond}."));
}
