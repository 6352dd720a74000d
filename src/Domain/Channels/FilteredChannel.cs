namespace Toepan.Domain.Channels;

/// <summary>One prepared channel at one class over its whole record, or the reason it cannot be had at that class.</summary>
/// <param name="History">Working unit, offset removed, filtered; null when absent.</param>
/// <param name="Absent">Why there is none, or null.</param>
/// <param name="UnfitFromS">Where an engineer's flag cut the record, s, or null: the samples from there on were dropped before filtering, so that none leaks back.</param>
public sealed record FilteredChannel(TimeHistory? History, string? Absent, double? UnfitFromS)
{
    /// <summary>
    /// Never filters twice: recorded at the wanted class it is used as it is, at a lower class it is absent, at a higher class or unfiltered it
    /// is filtered. Null class = as recorded.
    /// </summary>
    public static FilteredChannel From(PreparedChannel channel, int? filterClass)
    {
        if (channel.Unfit is { } unfit)
        {
            return new(null, unfit, null);
        }

        var code = channel.Recorded.Code;
        var interval = channel.Recorded.IntervalS!.Value;
        if (filterClass is { } wanted)
        {
            if (channel.RecordedClass < wanted)
            {
                return new(null, $"{code}: already filtered at class {channel.RecordedClass}, class {wanted} is wanted", null);
            }

            if (!CfcFilter.RateSuffices(interval, wanted))
            {
                return new(null, $"{code}: sampled at {Wording.Figure(1 / interval)} Hz, class {wanted} needs at least {CfcFilter.MinRateOverClass * wanted} Hz", null);
            }
        }

        var count = channel.UnfitFromS is { } until ? UsableCount(channel, until) : channel.Recorded.Samples.Length;
        if (count < CfcFilter.MinSamples)
        {
            return new(null, $"{code}: flagged unfit from {Wording.Ms(channel.UnfitFromS!.Value)} on: {channel.UnfitFromReason}", null);
        }

        var working = channel.Working(count);
        var values = filterClass is { } target && channel.RecordedClass != target ? CfcFilter.Apply(working, interval, target) : working;
        return new(new TimeHistory(channel.Recorded.FirstSampleS!.Value, interval, values), null, channel.UnfitFromS);
    }

    /// <summary>Samples strictly before a time.</summary>
    public static int UsableCount(PreparedChannel channel, double unfitFromS)
    {
        var samples = channel.Recorded.Samples.Length;
        var first = Math.Ceiling(((unfitFromS - channel.Recorded.FirstSampleS!.Value) / channel.Recorded.IntervalS!.Value) - SampleGrid.Tolerance);
        return (int)Math.Clamp(first, 0, samples);
    }
}
