using System.Globalization;
using Toepan.Domain.Packages.Iso13499;

namespace Toepan.Domain.Packages.Writing;

/// <summary>
/// One channel → ISO/TS 13499 channel file. The header is the recorded one; only where reading it would give another figure than the channel
/// has is a line set. Samples are written in the shortest form that reads back to the same double; a missing one as NOVALUE.
/// </summary>
internal static class ChannelFileWriter
{
    private const int LongestNumber = 32;

    /// <param name="channel">The channel.</param>
    /// <param name="timesPresent">Whether the package holds a channel of a given code, for explicit times.</param>
    public static byte[] Bytes(RecordedChannel channel, Func<string, bool> timesPresent)
    {
        var header = TextBytes.Of(HeaderWriter.Lines(Header(channel, timesPresent)));
        var bytes = new byte[header.Length + ((long)LongestNumber * channel.Samples.Length)];
        header.CopyTo(bytes, 0);
        var at = header.Length;
        foreach (var sample in channel.Samples.Span)
        {
            at += Write(sample, bytes.AsSpan(at));
        }

        return bytes[..at];
    }

    private static int Write(double sample, Span<byte> destination)
    {
        var written = 0;
        if (double.IsFinite(sample))
        {
            sample.TryFormat(destination, out written, "R", CultureInfo.InvariantCulture);
        }
        else
        {
            "NOVALUE"u8.CopyTo(destination);
            written = HeaderText.NoValue.Length;
        }

        destination[written] = (byte)'\r';
        destination[written + 1] = (byte)'\n';
        return written + 2;
    }

    private static List<HeaderEntry> Header(RecordedChannel channel, Func<string, bool> timesPresent)
    {
        var header = channel.Header.Count > 0 ? [.. channel.Header] : Blank(channel);
        var facts = ChannelFacts.Of(header);
        void Set(bool wrong, string key, string? value) => header = wrong ? HeaderWriter.Set(header, key, string.IsNullOrEmpty(value) ? HeaderText.NoValue : value) : header;

        Set((facts.Code ?? "") != channel.Code, HeaderKeys.ChannelCode, channel.Code);
        Set(facts.Unit != channel.Unit, HeaderKeys.Unit, channel.Unit);
        Set(facts.FilterClass != channel.HeaderFilterClass, HeaderKeys.FilterClass, channel.HeaderFilterClass);
        Set(ChannelJudge.UsableAmplitude(facts) != channel.AmplitudeClass, HeaderKeys.AmplitudeClass, Text(channel.AmplitudeClass));
        var explicitTimes = facts.TimesFrom is { } times && (channel.FirstSampleS is null || timesPresent(times));
        if (!explicitTimes)
        {
            Set(facts.TimesFrom is not null, HeaderKeys.Reference, "implicit");
            Set(ChannelJudge.UsableInterval(facts) != channel.IntervalS, HeaderKeys.Interval, Text(channel.IntervalS));
            Set(ChannelJudge.UsableFirstSample(facts) != channel.FirstSampleS, HeaderKeys.FirstSample, Text(channel.FirstSampleS));
        }

        var count = channel.StatedCount ?? channel.Samples.Length;
        Set(facts.CountEntry is null || facts.Count != channel.StatedCount, HeaderKeys.Count, count.ToString(CultureInfo.InvariantCulture));
        return header;
    }

    // The lines a channel without a header of its own gets, in the usual order.
    private static List<HeaderEntry> Blank(RecordedChannel channel)
    {
        var testObject = channel.Code.Length > 0 ? channel.Code[..1] : HeaderText.NoValue;
        string[] keys =
        [
            HeaderKeys.ChannelCode, HeaderKeys.Unit, HeaderKeys.FilterClass, HeaderKeys.AmplitudeClass, HeaderKeys.Interval, HeaderKeys.FirstSample, HeaderKeys.Count,
        ];
        return
        [
            new("Test object number", testObject, 0),
            new(HeaderKeys.ChannelName, channel.Code.Length > 0 ? channel.Code : HeaderText.NoValue, 0),
            .. keys.Select(key => new HeaderEntry(key, HeaderText.NoValue, 0)),
            new(HeaderKeys.Reference, "implicit", 0),
        ];
    }

    private static string? Text(double? value) => value?.ToString("R", CultureInfo.InvariantCulture);
}
