using Toepan.Domain.Measures;
using Toepan.Domain.Packages;

namespace Toepan.Domain.Channels;

/// <summary>One channel to look at: what to plot or export.</summary>
/// <param name="Code">Channel code.</param>
/// <param name="Unit">Unit of the values.</param>
/// <param name="FilterClass">Class of the values; null = unfiltered.</param>
/// <param name="Bias">What was subtracted, or null.</param>
/// <param name="RecordStartS">Time of the record's first sample, s.</param>
/// <param name="IntervalS">Sampling interval, s.</param>
/// <param name="FromS">Time of the first value, s.</param>
/// <param name="ToS">Time of the last value, s.</param>
/// <param name="Times">Time of each value where points were reduced; null = equally spaced from <paramref name="FromS"/>.</param>
/// <param name="Values">Values; NaN where a recorded sample is missing.</param>
public sealed record ChannelSeries(
    string Code, string Unit, int? FilterClass, BiasRemoved? Bias, double RecordStartS, double IntervalS, double FromS, double ToS,
    IReadOnlyList<double>? Times, IReadOnlyList<double> Values);

/// <summary>A series, or why there is none.</summary>
public sealed record SeriesAnswer(ChannelSeries? Series, string? Absent);

/// <summary>Which part of a channel is wanted.</summary>
/// <param name="FromS">From this time on, s; null = from the first sample.</param>
/// <param name="ToS">To this time, s, inclusive; null = to the last sample.</param>
/// <param name="Points">At most this many points (<see cref="PlotReduction"/>), 2 or more; null = all.</param>
public sealed record SeriesCut(double? FromS = null, double? ToS = null, int? Points = null);

/// <summary>Channels for people to look at: the whole record, not only the evaluation window.</summary>
public static class ChannelSeriesReader
{
    /// <summary>The samples exactly as the laboratory recorded them, in the recorded unit. Absent only where start or interval is unknown.</summary>
    public static SeriesAnswer AsRecorded(RecordedChannel channel, SeriesCut cut)
    {
        if (channel.FirstSampleS is not { } start || channel.IntervalS is not { } interval || !double.IsFinite(start) || !(interval > 0))
        {
            return new(null, $"{channel.Code}: no time of first sample or no sampling interval");
        }

        var letter = ChannelCode.TryParse(channel.Code)?.FilterLetter ?? '?';
        return Answer(channel.Code, channel.Unit, FilterClasses.Recorded(letter, channel.HeaderFilterClass), null, new(start, interval, channel.Samples), cut);
    }

    /// <summary>
    /// As measures get it: working unit, flags applied, offset removed, filtered to the class (null = not filtered here). Absent with the reason where
    /// the channel is unfit or cannot be had at that class; from an engineer's "unfit from" time on there are no samples.
    /// </summary>
    public static SeriesAnswer Prepared(RecordedChannel channel, IReadOnlyList<ChannelFlag> flags, int? filterClass, SeriesCut cut)
    {
        var prepared = ChannelPreparer.Prepare(channel, flags, expectedPeak: null);
        var filtered = FilteredChannel.From(prepared, filterClass);
        return filtered.History is { } history
            ? Answer(channel.Code, prepared.Unit!, filterClass ?? prepared.RecordedClass, prepared.Bias, history, cut)
            : new(null, filtered.Absent);
    }

    private static SeriesAnswer Answer(string code, string unit, int? filterClass, BiasRemoved? bias, TimeHistory whole, SeriesCut cut)
    {
        var range = SampleGrid.Between(whole, cut.FromS ?? double.NegativeInfinity, cut.ToS ?? double.PositiveInfinity);
        if (range.Count == 0)
        {
            return new(null, $"{code}: no samples in that stretch of time");
        }

        var (from, to) = (whole.TimeAt(range.First), whole.TimeAt(range.Last));
        var values = whole.Values.Slice(range.First, range.Count);
        if (cut.Points is not { } points || values.Length <= points)
        {
            return new(new(code, unit, filterClass, bias, whole.StartS, whole.IntervalS, from, to, null, values.ToArray()), null);
        }

        var kept = PlotReduction.Indices(values.Span, points);
        var times = Array.ConvertAll(kept, index => whole.TimeAt(range.First + index));
        var reduced = Array.ConvertAll(kept, index => values.Span[index]);
        return new(new(code, unit, filterClass, bias, whole.StartS, whole.IntervalS, from, to, times, reduced), null);
    }
}
