using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Channels;

/// <summary>
/// The channels of one package under one procedure edition and one set of flags. Selected, converted, corrected, filtered over the
/// whole record and cut to the evaluation window on demand; what was filtered once is kept. For one reduction on one thread.
/// </summary>
public sealed class ChannelSource : IChannelSource
{
    // Picoseconds: −0.06 + 600 · 0.0001 is 7e-18 in doubles, and is meant to be 0.
    private const int TimeDecimals = 12;

    private readonly Dictionary<(PreparedChannel, int?), FilteredChannel> filtered = new(PreparedKey.Instance);

    public ChannelSource(TestPackage package, ProcedureEdition procedure, IReadOnlyList<ChannelFlag> flags)
    {
        var expected = new ExpectedPeaks(package.Programme.Occupants, procedure.Channels);
        Channels = package.Channels.Select(channel => ChannelPreparer.Prepare(channel, flags, expected.Of(channel.Code))).ToList();
    }

    private ChannelSource(IReadOnlyList<PreparedChannel> channels, Dictionary<(PreparedChannel, int?), FilteredChannel> filtered) =>
        (Channels, this.filtered) = (channels, filtered);

    /// <summary>The same source as if the package had never held a transducer; what was filtered is shared.</summary>
    /// <param name="transducer">Code without its filter letter, <see cref="ChannelCode.Transducer"/>.</param>
    public ChannelSource Without(string transducer) => new([.. Channels.Where(channel => channel.Code?.Transducer != transducer)], filtered);

    /// <summary>Every channel of the package, in its order, prepared but not filtered.</summary>
    public IReadOnlyList<PreparedChannel> Channels { get; }

    /// <inheritdoc/>
    public bool Has(ChannelPattern pattern) => Channels.Any(channel => channel.Code is { } code && pattern.Matches(code.Text));

    /// <inheritdoc/>
    public ChannelAnswer Find(ChannelPattern pattern, int filterClass)
    {
        if (ChannelSelection.Select(Channels, pattern) is not { } chosen)
        {
            return new(null, $"no channel {pattern} in the package", Present: false);
        }

        var whole = Filtered(chosen, filterClass);
        if (whole.History is null)
        {
            return new(null, whole.Absent, Present: true);
        }

        var cut = Cut(chosen, whole, filterClass);
        var flagged = cut.ReliableUntilS is { } until
            ? $"{chosen.Recorded.Code}: flagged unfit from {Wording.Ms(until)} on: {chosen.UnfitFromReason}"
            : null;
        if (cut.History.Count == 0)
        {
            return new(null, flagged ?? $"{chosen.Recorded.Code}: no samples between 0 and 0.300 s", Present: true);
        }

        return flagged is null ? new(cut, null, Present: true) : new(null, flagged, Present: true, cut);
    }

    /// <summary>
    /// The channel that answers the pattern, filtered but not cut: for checks that look before contact. Null class = as recorded, not filtered
    /// here. Null where there is none, or where it is unfit or only fit up to a time within the window.
    /// </summary>
    public ReducedChannel? FindWhole(ChannelPattern pattern, int? filterClass)
    {
        if (ChannelSelection.Select(Channels, pattern) is not { } chosen)
        {
            return null;
        }

        var whole = Filtered(chosen, filterClass);
        return whole.History is null || (whole.UnfitFromS is { } until && !ReachesWindowEnd(chosen, until))
            ? null
            : Describe(chosen, whole.History, filterClass, null);
    }

    private FilteredChannel Filtered(PreparedChannel channel, int? filterClass)
    {
        if (!filtered.TryGetValue((channel, filterClass), out var result))
        {
            result = FilteredChannel.From(channel, filterClass);
            filtered.Add((channel, filterClass), result);
        }

        return result;
    }

    private static ReducedChannel Cut(PreparedChannel channel, FilteredChannel whole, int? filterClass)
    {
        var range = SampleGrid.Between(whole.History!, SampleGrid.WindowFromS, SampleGrid.WindowToS);
        var history = new TimeHistory(
            Math.Round(whole.History!.TimeAt(range.First), TimeDecimals), whole.History.IntervalS, range.Count == 0 ? default : whole.History.Values.Slice(range.First, range.Count));
        return Describe(channel, history, filterClass, whole.UnfitFromS is { } until && !ReachesWindowEnd(channel, until) ? until : null);
    }

    private static ReducedChannel Describe(PreparedChannel channel, TimeHistory history, int? filterClass, double? reliableUntilS)
    {
        var record = (Start: channel.Recorded.FirstSampleS!.Value, Interval: channel.Recorded.IntervalS!.Value);
        var from = history.StartS;
        var to = history.TimeAt(Math.Max(0, history.Count - 1));
        var clipped = channel.Clipped
            .Select(stretch => new ClippedStretch(
                Math.Max(from, record.Start + (stretch.First * record.Interval)), Math.Min(to, record.Start + (stretch.Last * record.Interval))))
            .Where(stretch => stretch.FromS <= stretch.ToS);
        return new ReducedChannel
        {
            Code = channel.Recorded.Code,
            Unit = channel.Unit!,
            FilterClass = filterClass ?? channel.RecordedClass,
            History = history,
            Bias = channel.Bias,
            RecordStartS = record.Start,
            Clipped = clipped.ToList(),
            ReliableUntilS = reliableUntilS,
        };
    }

    // Whether a channel unfit from a time on still covers every sample it has in the evaluation window.
    private static bool ReachesWindowEnd(PreparedChannel channel, double unfitFromS)
    {
        var (start, interval, count) = (channel.Recorded.FirstSampleS!.Value, channel.Recorded.IntervalS!.Value, channel.Recorded.Samples.Length);
        var window = SampleGrid.Between(start, interval, count, SampleGrid.WindowFromS, SampleGrid.WindowToS);
        return FilteredChannel.UsableCount(channel, unfitFromS) > window.Last;
    }

    private sealed class PreparedKey : IEqualityComparer<(PreparedChannel Channel, int? Class)>
    {
        public static PreparedKey Instance { get; } = new();

        public bool Equals((PreparedChannel Channel, int? Class) x, (PreparedChannel Channel, int? Class) y) =>
            ReferenceEquals(x.Channel, y.Channel) && x.Class == y.Class;

        public int GetHashCode((PreparedChannel Channel, int? Class) key) =>
            HashCode.Combine(System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(key.Channel), key.Class);
    }
}
