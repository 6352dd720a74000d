using System.Globalization;

namespace Toepan.Domain.Packages.Iso13499;

/// <summary>A channel file taken apart.</summary>
internal sealed record ChannelFile(string File, int Number, IReadOnlyList<HeaderEntry> Header, SampleReading Samples);

/// <summary>Header facts and samples → <see cref="RecordedChannel"/>, with a problem for whatever is missing, odd or impossible.</summary>
internal sealed class ChannelJudge(ProblemList problems)
{
    /// <summary>Sampling intervals outside these bounds, s, are no recording of a crash (our own bounds, no source).</summary>
    public const double ShortestIntervalS = 1e-7;
    public const double LongestIntervalS = 0.1;

    /// <summary>A first sample further from contact than this, s, is no recording of it (our own bound, no source).</summary>
    public const double FurthestStartS = 1e4;

    /// <summary>The stated interval where it is one, s.</summary>
    public static double? UsableInterval(ChannelFacts facts) => facts.Interval.Value is { } value and >= ShortestIntervalS and <= LongestIntervalS ? value : null;

    /// <summary>The stated time of first sample where it is one, s.</summary>
    public static double? UsableFirstSample(ChannelFacts facts) => facts.FirstSample.Value is { } value and >= -FurthestStartS and <= FurthestStartS ? value : null;

    /// <summary>The stated amplitude class where it is one, in the recorded unit.</summary>
    public static double? UsableAmplitude(ChannelFacts facts) => facts.AmplitudeClass.Value is { } value and > 0 ? value : null;

    public RecordedChannel Judge(ChannelFile channel, IndexEntry? indexed)
    {
        var facts = ChannelFacts.Of(channel.Header);
        var place = new Place(channel.File);
        var code = Code(channel, facts, indexed, place);
        place = place.Of(code);
        WarnOfDuplicates(channel.Header, place);
        var unfit = new List<string>();
        Blame(unfit, ChannelCodeCheck.Check(code, HeaderText.FindValue(channel.Header, HeaderKeys.ChannelCode)?.Line, place, problems));
        Blame(unfit, JudgeUnit(channel.Header, facts, place));
        var implicitTimes = facts.TimesFrom is null && !ChannelCodeTables.HoldsTimes(code);
        var interval = Interval(facts, place, implicitTimes, unfit);
        var first = FirstSample(facts, place, implicitTimes, unfit);
        Blame(unfit, JudgeSamples(channel, facts, place));
        Blame(unfit, ChannelCodeTables.HoldsTimes(code) ? "it holds times, not a measured quantity" : null);
        WarnOfCommas(channel, facts, place);
        return new RecordedChannel
        {
            Code = code,
            File = channel.File,
            Number = channel.Number,
            Unit = facts.Unit,
            FirstSampleS = first,
            IntervalS = interval,
            Samples = channel.Samples.Values,
            AmplitudeClass = Amplitude(facts, place),
            HeaderFilterClass = facts.FilterClass,
            StatedCount = facts.Count,
            FirstBadSample = channel.Samples.FirstBad,
            FirstSampleLine = channel.Samples.FirstLine,
            UnfitReason = unfit.FirstOrDefault(),
            Header = channel.Header,
        };
    }

    private string Code(ChannelFile channel, ChannelFacts facts, IndexEntry? indexed, Place place)
    {
        if (facts.Code is { } own)
        {
            if (indexed is not null && indexed.Code != own)
            {
                problems.Warn(ProblemCodes.IndexDiffers, $"The index calls channel {channel.Number} {indexed.Code}, its header {own}; the header's is used.", place.At(HeaderText.Find(channel.Header, HeaderKeys.ChannelCode)!.Line).Of(own), own, indexed.Code);
            }

            TellCase(channel.Header, own, place);
            return own;
        }

        if (indexed is not null)
        {
            problems.Warn(ProblemCodes.NoCode, $"The header has no channel code; the index's, {indexed.Code}, is used.", place.Of(indexed.Code));
            return indexed.Code;
        }

        problems.Error(ProblemCodes.NoCode, "Neither the header nor the index has a code for this channel; it cannot be used.", place);
        return "";
    }

    private void TellCase(IReadOnlyList<HeaderEntry> header, string code, Place place)
    {
        if (HeaderText.FindValue(header, HeaderKeys.ChannelCode) is { } entry && entry.Value.Any(char.IsLower))
        {
            problems.Note(ProblemCodes.CodeCase, "The channel code is kept in upper case.", place.At(entry.Line).Of(code), entry.Value);
        }
    }

    private void WarnOfDuplicates(IReadOnlyList<HeaderEntry> header, Place place)
    {
        foreach (var key in HeaderKeys.Single)
        {
            var all = header.Where(entry => HeaderText.SameKey(entry.Key, key)).ToList();
            if (all.Find(entry => entry.Value != all[0].Value) is { } other)
            {
                problems.Warn(ProblemCodes.HeaderDuplicate, $"The header has '{key}' twice with different values; the first is used.", place.At(other.Line), other.Value, all[0].Value);
            }
        }
    }

    private string? JudgeUnit(IReadOnlyList<HeaderEntry> header, ChannelFacts facts, Place place)
    {
        if (facts.Unit.Length > 0)
        {
            return null;
        }

        problems.Error(ProblemCodes.NoUnit, "The channel has no unit; it cannot be used.", place.At(HeaderText.Find(header, HeaderKeys.Unit)?.Line));
        return "it has no unit";
    }

    private double? Interval(ChannelFacts facts, Place place, bool needed, List<string> unfit)
    {
        var number = facts.Interval;
        if (number.Absent)
        {
            if (needed)
            {
                problems.Error(ProblemCodes.NoInterval, "The channel has no sampling interval; it cannot be used.", place);
                unfit.Add("it has no sampling interval");
            }

            return null;
        }

        if (UsableInterval(facts) is { } usable)
        {
            return usable;
        }

        problems.Error(
            ProblemCodes.BadInterval, $"The sampling interval is {ProblemList.Show(number.Entry!.Value)}; a number of seconds between {Text(ShortestIntervalS)} and {Text(LongestIntervalS)} is needed.",
            place.At(number.Entry.Line), number.Entry.Value, $"{Text(ShortestIntervalS)} to {Text(LongestIntervalS)} s");
        unfit.Add($"its sampling interval is {ProblemList.Show(number.Entry.Value)}");
        return null;
    }

    private double? FirstSample(ChannelFacts facts, Place place, bool needed, List<string> unfit)
    {
        var number = facts.FirstSample;
        if (number.Absent)
        {
            if (needed)
            {
                problems.Error(ProblemCodes.NoFirstSample, "The channel has no time of first sample; it cannot be used.", place);
                unfit.Add("it has no time of first sample");
            }

            return null;
        }

        if (UsableFirstSample(facts) is { } usable)
        {
            return usable;
        }

        problems.Error(
            ProblemCodes.BadFirstSample, $"The time of first sample is {ProblemList.Show(number.Entry!.Value)}; a number of seconds within {Text(FurthestStartS)} of contact is needed.",
            place.At(number.Entry.Line), number.Entry.Value, $"±{Text(FurthestStartS)} s");
        unfit.Add($"its time of first sample is {ProblemList.Show(number.Entry.Value)}");
        return null;
    }

    private string? JudgeSamples(ChannelFile channel, ChannelFacts facts, Place place)
    {
        var samples = channel.Samples;
        if (facts.CountEntry is { } stated && facts.Count != samples.Values.Length)
        {
            var code = facts.Count is >= 0 ? ProblemCodes.CountDiffers : ProblemCodes.BadCount;
            problems.Warn(code, $"The header states {ProblemList.Show(stated.Value)} samples; {samples.Values.Length} are there and are used.", place.At(stated.Line), stated.Value, Text(samples.Values.Length));
        }

        if (samples.Values.Length == 0)
        {
            problems.Error(ProblemCodes.NoSamples, "The channel has no samples.", place);
            return "it has no samples";
        }

        if (samples.FirstBad is { } bad)
        {
            var shown = ProblemList.Show(samples.FirstBadText!);
            problems.Error(
                ProblemCodes.BadSample, $"Sample {bad + 1} is '{shown}', which is not a number ({samples.BadCount} such in all); the channel cannot be used.",
                place.At(samples.FirstBadLine), samples.FirstBadText);
            return $"sample {bad + 1} is '{shown}', which is not a number";
        }

        return null;
    }

    private double? Amplitude(ChannelFacts facts, Place place)
    {
        var number = facts.AmplitudeClass;
        var usable = UsableAmplitude(facts);
        if (!number.Absent && usable is null)
        {
            problems.Warn(ProblemCodes.BadAmplitudeClass, $"The channel amplitude class is {ProblemList.Show(number.Entry!.Value)}, which is no positive number; it is not used.", place.At(number.Entry.Line), number.Entry.Value);
        }

        return usable;
    }

    private void WarnOfCommas(ChannelFile channel, ChannelFacts facts, Place place)
    {
        var inHeader = new[] { facts.Interval, facts.FirstSample, facts.AmplitudeClass }.Where(number => number.DecimalComma).Select(number => (int?)number.Entry!.Line).Min();
        if ((inHeader ?? channel.Samples.FirstCommaLine) is { } line)
        {
            problems.Warn(ProblemCodes.DecimalComma, "Numbers with a decimal comma were read as if they had a point.", place.At(line));
        }
    }

    private static void Blame(List<string> unfit, string? reason)
    {
        if (reason is not null)
        {
            unfit.Add(reason);
        }
    }

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
