using Toepan.Domain.Channels;

namespace Toepan.Api.Channels;

/// <summary>A prepared channel → the samples asked for.</summary>
internal static class SampleCut
{
    public static Outcome<ChannelSamples> Of(PreparedChannel channel, SampleQuery query)
    {
        var recorded = channel.Recorded;
        if (recorded is not { FirstSampleS: { } start, IntervalS: { } interval } || !(double.IsFinite(start) && interval > 0))
        {
            return NotGiven(recorded.Code, channel.Unfit ?? "it has no usable times");
        }

        var history = Whole(channel, query.Cfc, start, interval, out var absent);
        if (history is null)
        {
            return NotGiven(recorded.Code, absent!);
        }

        var range = SampleGrid.Between(history, query.FromS ?? double.MinValue, query.ToS ?? double.MaxValue);
        var cut = history.Values.Slice(range.Count == 0 ? 0 : range.First, range.Count);
        var first = Instants.Of(history.TimeAt(range.First));
        var samples = new ChannelSamples(
            recorded.Code, channel.Unit ?? recorded.Unit, query.Cfc ?? channel.RecordedClass, channel.Bias, first,
            Instants.Of(history.TimeAt(range.First + Math.Max(0, range.Count - 1))), interval, start, cut.Length, null, cut.ToArray());
        return query.Points is { } points && points < cut.Length ? Fewer(samples, points) : samples;
    }

    /// <summary>The whole record: filtered where it can be; as recorded (converted, offset removed) where no class is asked, fit or not.</summary>
    private static TimeHistory? Whole(PreparedChannel channel, int? cfc, double start, double interval, out string? absent)
    {
        absent = null;
        if (cfc is null)
        {
            return new TimeHistory(start, interval, channel.Working(channel.Recorded.Samples.Length));
        }

        var filtered = FilteredChannel.From(channel, cfc);
        absent = filtered.Absent;
        return filtered.History;
    }

    private static ChannelSamples Fewer(ChannelSamples samples, int points)
    {
        var values = (double[])samples.Values;
        var kept = PlotReduction.Indices(values, points);
        return samples with
        {
            Count = kept.Length,
            Times = Array.ConvertAll(kept, index => Instants.Of(samples.FromS + (index * samples.IntervalS))),
            Values = Array.ConvertAll(kept, index => values[index]),
        };
    }

    private static Failure NotGiven(string code, string reason) =>
        new(FailureKind.Unreadable, "The channel cannot be given so", $"Channel '{code}': {reason}.");
}
