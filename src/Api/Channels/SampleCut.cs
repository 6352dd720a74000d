using Toepan.Domain.Channels;

namespace Toepan.Api.Channels;

/// <summary>A prepared channel → the samples asked for.</summary>
internal static class SampleCut
{
    public static Outcome<ChannelSamples> Of(PreparedChannel channel, SampleQuery query)
    {
        var code = channel.Recorded.Code;
        var view = ChannelView.Of(channel, query.Cfc);
        if (view.History is not { } history)
        {
            return new Failure(FailureKind.Unreadable, "The channel cannot be given so", $"Channel '{code}': {view.Absent}.");
        }

        var range = SampleGrid.Between(history, query.FromS ?? double.MinValue, query.ToS ?? double.MaxValue);
        var cut = history.Values.Slice(range.Count == 0 ? 0 : range.First, range.Count);
        var first = Instants.Of(history.TimeAt(range.First));
        var samples = new ChannelSamples(
            code, view.Unit, view.FilterClass, channel.Bias, first, Instants.Of(history.TimeAt(range.First + Math.Max(0, range.Count - 1))),
            history.IntervalS, history.StartS, cut.Length, null, cut.ToArray());
        return query.Points is { } points && points < cut.Length ? Fewer(samples, points) : samples;
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
}
