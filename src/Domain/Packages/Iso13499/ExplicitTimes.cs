using System.Globalization;

namespace Toepan.Domain.Packages.Iso13499;

/// <summary>Start and interval of uniformly spaced times, or where they stop being uniform.</summary>
internal readonly record struct UniformTimes(double FirstS, double IntervalS, int? FirstOdd)
{
    /// <summary>How far a time may lie off its place, in intervals.</summary>
    public const double Tolerance = 1e-6;

    /// <summary>
    /// Takes the interval = (last − first)/(n − 1) and compares every time with its place. At least two times; times must rise. The interval is
    /// rounded to 12 digits, so that 0.0001 does not become 0.00010000000000000002, unless that would shift the last time by a tenth of the
    /// tolerance.
    /// </summary>
    public static UniformTimes Of(ReadOnlySpan<double> times, double perSecond)
    {
        var first = times[0] / perSecond;
        var mean = ((times[^1] / perSecond) - first) / (times.Length - 1);
        var rounded = double.Parse(mean.ToString("G12", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        var interval = Math.Abs(rounded - mean) * (times.Length - 1) <= 0.1 * Tolerance * mean ? rounded : mean;
        for (var i = 0; i < times.Length; i++)
        {
            var off = Math.Abs((times[i] / perSecond) - (first + (i * interval)));
            if (!(interval > 0 && off <= Tolerance * interval))
            {
                return new(first, interval, i);
            }
        }

        return new(first, interval, null);
    }

    public bool Plausible => FirstOdd is null && IntervalS is >= ChannelJudge.ShortestIntervalS and <= ChannelJudge.LongestIntervalS
        && Math.Abs(FirstS) <= ChannelJudge.FurthestStartS;
}

/// <summary>Gives channels with explicit times their start and interval, from the channel that holds the times.</summary>
internal sealed class ExplicitTimes(IReadOnlyList<RecordedChannel> channels, ProblemList problems)
{
    private const string ReasonStart = "its explicit times cannot be used: ";

    private readonly Dictionary<string, UniformTimes> known = [];

    /// <summary>The channels with their times settled; channels with implicit times as they are.</summary>
    public IReadOnlyList<RecordedChannel> Resolve() => [.. channels.Select(Resolve)];

    private RecordedChannel Resolve(RecordedChannel channel)
    {
        if (ChannelFacts.Of(channel.Header).TimesFrom is not { } reference || ChannelCodeTables.HoldsTimes(channel.Code))
        {
            return channel;
        }

        var place = new Place(channel.File, HeaderText.Find(channel.Header, HeaderKeys.ReferenceName)?.Line, channel.Code);
        var times = channels.FirstOrDefault(other => other.Code == reference && !ReferenceEquals(other, channel));
        if (times is null)
        {
            return Unfit(channel, ProblemCodes.NoReference, $"there is no channel '{ProblemList.Show(reference)}' with the times", place, reference);
        }

        if (Flaw(channel, times) is { } flaw)
        {
            return Unfit(channel, ProblemCodes.TimesUnusable, flaw, place, reference);
        }

        var uniform = TimesOf(times);
        return uniform.Plausible
            ? channel with { FirstSampleS = uniform.FirstS, IntervalS = uniform.IntervalS }
            : Unfit(
                channel, ProblemCodes.TimesNotUniform,
                uniform.FirstOdd is { } odd ? $"time {odd + 1} of {times.Code} is off its place by more than 1e-6 of an interval" : string.Create(CultureInfo.InvariantCulture, $"an interval of {uniform.IntervalS} s from {uniform.FirstS} s is no recording of a crash"),
                place, uniform.FirstOdd is { } at ? times.Samples.Span[at].ToString("R", CultureInfo.InvariantCulture) : null);
    }

    private static string? Flaw(RecordedChannel channel, RecordedChannel times) =>
        PerSecond(times.Unit) is null ? $"the times of {times.Code} are in '{ProblemList.Show(times.Unit)}', not in s or ms"
        : times.FirstBadSample is { } bad ? $"time {bad + 1} of {times.Code} is not a number"
        : times.Samples.Length < 2 ? $"{times.Code} holds {times.Samples.Length} times"
        : times.Samples.Length != channel.Samples.Length ? $"{times.Code} holds {times.Samples.Length} times for {channel.Samples.Length} samples"
        : null;

    /// <summary>How many of a unit of time make a second; null for other units.</summary>
    public static double? PerSecond(string unit) => unit.Trim().ToUpperInvariant() switch
    {
        "S" or "SEC" => 1,
        "MS" or "MSEC" => 1_000,
        _ => null,
    };

    private UniformTimes TimesOf(RecordedChannel times)
    {
        if (!known.TryGetValue(times.File, out var uniform))
        {
            known.Add(times.File, uniform = UniformTimes.Of(times.Samples.Span, PerSecond(times.Unit)!.Value));
        }

        return uniform;
    }

    private RecordedChannel Unfit(RecordedChannel channel, string code, string what, Place place, string? value)
    {
        problems.Error(code, $"The channel's explicit times cannot be used: {what}.", place, value, code == ProblemCodes.TimesNotUniform ? "1e-6 of an interval" : null);
        return channel with { FirstSampleS = null, IntervalS = null, UnfitReason = channel.UnfitReason ?? ReasonStart + what };
    }
}
