using Toepan.Domain.Packages;
using static Toepan.Domain.Channels.Wording;

namespace Toepan.Domain.Channels.Quality;

/// <summary>What the checks look at: finite samples on a known grid.</summary>
/// <param name="Channel">As recorded.</param>
/// <param name="StartS">Time of the first sample, s.</param>
/// <param name="IntervalS">Sampling interval, s.</param>
/// <param name="Factor">Recorded unit to working unit, an engineer's polarity and scale included.</param>
/// <param name="BiasValue">Offset in working units, 0 where none is removed.</param>
/// <param name="Drift">Drift of the offset window in working units, or null where there is no window.</param>
/// <param name="Unit">Unit of the messages.</param>
/// <param name="ExpectedPeak">Sign the procedure expects of the main peak, or null.</param>
public sealed record QualityContext(
    RecordedChannel Channel, double StartS, double IntervalS, double Factor, double BiasValue, double? Drift, string Unit, int? ExpectedPeak);

/// <summary>
/// The quality checks of methods edition 1 that leave a channel usable: each a warning with its numbers. Common practice, no source.
/// </summary>
public static class QualityChecks
{
    /// <summary>A record that ends before this is too short, s.</summary>
    public const double ShortestS = 0.150;

    /// <summary>Largest drift of the offset window's halves, as a fraction of the channel's range.</summary>
    public const double LargestDrift = 0.005;

    /// <summary>Every problem found, in a fixed order.</summary>
    public static IEnumerable<Problem> Run(QualityContext context, IReadOnlyList<SampleRange> clipped) =>
        new[] { Clipped(context, clipped), Spike(context), Polarity(context), TooShort(context), Count(context), Drift(context) }.OfType<Problem>();

    private static Problem? Clipped(QualityContext c, IReadOnlyList<SampleRange> clipped)
    {
        if (clipped.Count == 0)
        {
            return null;
        }

        var first = clipped[0];
        var samples = clipped.Sum(stretch => stretch.Count);
        var level = c.Channel.Samples.Span[first.First];
        return Warn(
            c, "channel.clipped",
            $"clipped at {Figure(level)} {c.Channel.Unit}: {samples} samples in {clipped.Count} stretches, the first from {Ms(Time(c, first.First))} to {Ms(Time(c, first.Last))}",
            first.First, Figure(level), c.Channel.AmplitudeClass is { } stop ? Figure(stop) : null);
    }

    private static Problem? Spike(QualityContext c)
    {
        if (Spikes.First(c.Channel.Samples.Span) is not { } at)
        {
            return null;
        }

        var samples = c.Channel.Samples.Span;
        return Warn(
            c, "channel.spike",
            $"a single sample at {Ms(Time(c, at))} reads {Figure(samples[at])} {c.Channel.Unit} between {Figure(samples[at - 1])} and {Figure(samples[at + 1])}",
            at, Figure(samples[at]), "half the channel's range");
    }

    private static Problem? Polarity(QualityContext c)
    {
        var range = SampleGrid.Between(c.StartS, c.IntervalS, c.Channel.Samples.Length, SampleGrid.WindowFromS, SampleGrid.WindowToS);
        if (c.ExpectedPeak is not { } expected || range.Count == 0)
        {
            return null;
        }

        var peak = 0.0;
        var at = range.First;
        for (var i = range.First; i <= range.Last; i++)
        {
            var value = (c.Channel.Samples.Span[i] * c.Factor) - c.BiasValue;
            (peak, at) = Math.Abs(value) > Math.Abs(peak) ? (value, i) : (peak, at);
        }

        return Math.Sign(peak) != -Math.Sign(expected) ? null : Warn(
            c, "channel.polarity",
            $"the main peak is {Figure(peak)} {c.Unit} at {Ms(Time(c, at))}, the procedure expects it {(expected > 0 ? "positive" : "negative")}",
            at, Figure(peak), expected > 0 ? "positive" : "negative");
    }

    private static Problem? TooShort(QualityContext c)
    {
        var count = c.Channel.Samples.Length;
        var end = Time(c, count - 1);
        var enough = ((ShortestS - c.StartS) / c.IntervalS) - SampleGrid.Tolerance <= count - 1;
        return enough ? null : Warn(c, "channel.short", $"the record ends at {Ms(end)}, before {Ms(ShortestS)}", null, Ms(end), Ms(ShortestS));
    }

    private static Problem? Count(QualityContext c) =>
        c.Channel.StatedCount is { } stated && stated != c.Channel.Samples.Length
            ? Warn(
                c, "channel.count",
                $"the header states {stated} samples, {c.Channel.Samples.Length} are there; at {Figure(c.IntervalS)} s apart the record ends at {Ms(Time(c, c.Channel.Samples.Length - 1))}, not {Ms(Time(c, stated - 1))}",
                null, $"{c.Channel.Samples.Length}", $"{stated}")
            : null;

    private static Problem? Drift(QualityContext c)
    {
        var (min, max) = Extremes.Of(c.Channel.Samples.Span);
        var range = (max - min) * Math.Abs(c.Factor);
        return c.Drift is { } drift && drift > LargestDrift * range
            ? Warn(
                c, "channel.drift",
                $"the zero drifts by {Figure(drift)} {c.Unit} before contact, {Figure(100 * drift / range)} % of the channel's range",
                null, $"{Figure(100 * drift / range)} %", $"{Figure(100 * LargestDrift)} %")
            : null;
    }

    private static double Time(QualityContext c, int index) => c.StartS + (index * c.IntervalS);

    // The file line of a sample is only sure where every line holds one sample; the first sample's line is.
    private static Problem Warn(QualityContext c, string code, string what, int? sample, string? value, string? limit) => new(
        ProblemSeverity.Warning, code, $"{c.Channel.Code}: {what}.", c.Channel.File,
        sample is { } at && c.Channel.FirstSampleLine > 0 && c.Channel.StatedCount == c.Channel.Samples.Length ? c.Channel.FirstSampleLine + at : null,
        c.Channel.Code, value, limit);
}
