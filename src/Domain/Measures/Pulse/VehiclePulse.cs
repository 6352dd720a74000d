using Toepan.Domain.Channels;

namespace Toepan.Domain.Measures.Pulse;

/// <summary>
/// The vehicle's longitudinal acceleration, g, forward positive: <c>10VEHC….ACX</c>, else the mean of <c>10BPIL{LE,RI}….ACX</c>, else of
/// <c>10SILL{LE,RI}….ACX</c>. "Else" means not in the package: a channel that is there and unfit makes the pulse absent; half a pair goes to the next source.
/// </summary>
/// <param name="History">Evaluation window, or null when absent.</param>
/// <param name="Channels">The one channel or the pair it comes from, where they could be used.</param>
/// <param name="Absent">Why there is none, or null.</param>
/// <param name="Partial">Where the channels are only fit up to a time: the part before; else null.</param>
public sealed record VehiclePulse(TimeHistory? History, IReadOnlyList<ReducedChannel> Channels, string? Absent, TimeHistory? Partial)
{
    private const string AnyPlace = "????";

    /// <summary>Location of the vehicle's own accelerometer.</summary>
    public static ChannelPattern Centre { get; } = ChannelPattern.Vehicle("VEHC" + AnyPlace, "ACX");

    /// <summary>Left and right pillar or sill pairs, in order of preference.</summary>
    public static IReadOnlyList<(ChannelPattern Left, ChannelPattern Right)> Pairs { get; } = [Pair("BPIL"), Pair("SILL")];

    /// <summary>The pulse at a filter class.</summary>
    public static VehiclePulse Find(IChannelSource source, int filterClass)
    {
        if (source.Has(Centre))
        {
            return Combine([source.Find(Centre, filterClass)]);
        }

        foreach (var (left, right) in Pairs)
        {
            if (source.Has(left) && source.Has(right))
            {
                return Combine([source.Find(left, filterClass), source.Find(right, filterClass)]);
            }
        }

        return new(null, [], "no vehicle acceleration in x: neither 10VEHC nor a left and right pair of 10BPIL or 10SILL is in the package", null);
    }

    /// <summary>Whether a decelerating channel was at its stop: the true deceleration was at least the recorded one.</summary>
    public bool DecelerationClipped => Channels.Any(channel => channel.Clipped.Any(stretch => IsNegative(channel.History, stretch)));

    private static (ChannelPattern Left, ChannelPattern Right) Pair(string location) =>
        (ChannelPattern.Vehicle(location + "LE??", "ACX"), ChannelPattern.Vehicle(location + "RI??", "ACX"));

    private static VehiclePulse Combine(IReadOnlyList<ChannelAnswer> answers)
    {
        var channels = answers.Select(answer => answer.Channel ?? answer.Partial).OfType<ReducedChannel>().ToList();
        var absent = answers.FirstOrDefault(answer => answer.Channel is null)?.Absent;
        if (channels.Count < answers.Count)
        {
            return new(null, channels, absent, null);
        }

        if (Resultant.Disagreement(channels) is { } disagreement)
        {
            return new(null, channels, disagreement, null);
        }

        var mean = Mean(channels);
        return absent is null ? new(mean, channels, null, null) : new(null, channels, absent, mean);
    }

    private static TimeHistory Mean(List<ReducedChannel> channels)
    {
        var first = channels[0].History;
        if (channels.Count == 1)
        {
            return first;
        }

        var values = new double[channels.Min(channel => channel.History.Count)];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = channels.Sum(channel => channel.History.Values.Span[i]) / channels.Count;
        }

        return new(first.StartS, first.IntervalS, values);
    }

    private static bool IsNegative(TimeHistory history, ClippedStretch stretch)
    {
        var range = SampleGrid.Between(history, stretch.FromS, stretch.ToS);
        return range.Count > 0 && history.Values.Span[range.First + (range.Count / 2)] < 0;
    }
}
