namespace Toepan.Domain.Channels;

/// <summary>A channel as people look at it: the whole record, not only the evaluation window.</summary>
/// <param name="History">Samples; null when absent.</param>
/// <param name="Unit">Working unit, or the recorded one where that is unknown.</param>
/// <param name="FilterClass">Class of the samples; null = unfiltered.</param>
/// <param name="Absent">Why there is none, or null.</param>
public sealed record ChannelView(TimeHistory? History, string Unit, int? FilterClass, string? Absent)
{
    /// <summary>
    /// Working unit, flags applied, offset removed. At a class: as measures get it, so absent where the channel is unfit or cannot be had at that class, and
    /// without the samples from an engineer's "unfit from" on. Without one: every sample recorded, fit or not. Absent only where start or interval is unknown.
    /// </summary>
    public static ChannelView Of(PreparedChannel channel, int? filterClass)
    {
        var recorded = channel.Recorded;
        var unit = channel.Unit ?? recorded.Unit;
        var shown = filterClass ?? channel.RecordedClass;
        if (recorded is not { FirstSampleS: { } start, IntervalS: { } interval } || !(double.IsFinite(start) && interval > 0))
        {
            return new(null, unit, shown, channel.Unfit ?? "it has no usable times");
        }

        if (filterClass is null)
        {
            return new(new TimeHistory(start, interval, channel.Working(recorded.Samples.Length)), unit, shown, null);
        }

        var filtered = FilteredChannel.From(channel, filterClass);
        return new(filtered.History, unit, shown, filtered.Absent);
    }
}
