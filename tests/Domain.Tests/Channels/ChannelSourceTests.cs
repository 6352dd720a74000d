using System.Globalization;
using Toepan.Domain.Channels;
using Toepan.Domain.Measures;
using Xunit;
using static Toepan.Domain.Tests.Channels.TestPackages;

namespace Toepan.Domain.Tests.Channels;

/// <summary>Selection, conversion, offset, filtering once and cutting; rules of methods edition 1, "Before anything" and settled readings.</summary>
public sealed class ChannelSourceTests
{
    private static readonly ChannelPattern HeadX = ChannelPattern.Dummy(1, "HEAD0000", "ACX");

    [Fact]
    public void Find_NoSuchChannel_IsAbsentAndNotPresent()
    {
        var answer = Source(Channel("11HEAD0000H3ACYP", "g", Pulse)).Find(HeadX, 1000);

        Assert.Null(answer.Channel);
        Assert.False(answer.Present);
        Assert.Contains("11HEAD0000??ACX?", answer.Absent, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_MetresPerSecondSquared_IsDividedByStandardGravity()
    {
        var inG = Source(Channel("11HEAD0000H3ACXP", "g", Pulse)).Find(HeadX, 1000).Channel!;
        var inMs2 = Source(Channel("11HEAD0000H3ACXP", "m/(s*s)", t => Pulse(t) * 9.80665)).Find(HeadX, 1000).Channel!;

        Assert.Equal("g", inMs2.Unit);
        Assert.All(Enumerable.Range(0, inG.History.Count), i => Assert.Equal(inG.History.Values.Span[i], inMs2.History.Values.Span[i], 1e-11));
    }

    [Fact]
    public void Find_WholeRecordFilteredThenCut_StartsAtContactAndEndsAt300Milliseconds()
    {
        var channel = Source(Channel("11HEAD0000H3ACXP", "g", Pulse, endS: 0.400)).Find(HeadX, 600).Channel!;
        var whole = CfcFilter.Apply(
            Enumerable.Range(0, 4601).Select(i => Pulse(-0.060 + (i * Dt))).ToArray(), Dt, 600);

        Assert.Equal(3001, channel.History.Count);
        Assert.Equal(0, channel.History.StartS, 1e-12);
        Assert.All(Enumerable.Range(0, 3001), i => Assert.Equal(whole[600 + i] - channel.Bias!.Value, channel.History.Values.Span[i], 1e-10));
    }

    [Fact]
    public void Find_OffsetBeforeContact_IsSubtractedAndRecorded()
    {
        var channel = Source(Channel("11HEAD0000H3ACXP", "g", t => 2.5 + (t > 0 ? Math.Sin(40 * t) : 0))).Find(HeadX, 1000).Channel!;

        Assert.Equal(2.5, channel.Bias!.Value, 1e-12);
        Assert.Equal(-0.050, channel.Bias.FromS, 1e-12);
        Assert.Equal(-0.005, channel.Bias.ToS, 1e-12);
        Assert.Equal(0, channel.History.Values.Span[0], 1e-3);
    }

    [Theory]
    [InlineData(-0.0149, true)] // samples -0.0149 ... -0.005 at 10 kHz: 100, n·dt = 10 ms
    [InlineData(-0.0148, false)] // 99 samples
    public void Find_OffsetWindow_NeedsTenMilliseconds(double startS, bool removed)
    {
        var channel = Source(Channel("11HEAD0000H3ACXP", "g", t => 1 + (t > 0 ? Math.Sin(40 * t) : 0), startS)).Find(HeadX, 1000).Channel!;

        Assert.Equal(removed, channel.Bias is not null);
    }

    [Theory]
    [InlineData(0.0, 0.2999, 3000)] // no sample at the end bound: the last before it
    [InlineData(0.00003, 0.300, 3000)] // no sample at t = 0: the first with t ≥ 0
    public void Find_WindowBounds_AreCountedInSamples(double startS, double endS, int expected)
    {
        var channel = Source(Channel("11HEAD0000H3ACXP", "g", t => Math.Sin(40 * t), startS, endS)).Find(HeadX, 1000).Channel!;

        Assert.Equal(expected, channel.History.Count);
        Assert.Equal(startS, channel.History.StartS, 1e-15);
    }

    [Fact]
    public void Find_AlreadyAtWantedClass_IsUsedAsItIs()
    {
        var recorded = Channel("11HEAD0000H3ACXA", "g", Rough, startS: 0);

        var channel = Source(recorded).Find(HeadX, 1000).Channel!;

        Assert.Equal(recorded.Samples.ToArray(), channel.History.Values.ToArray());
        Assert.Equal(1000, channel.FilterClass);
    }

    [Fact]
    public void Find_AlreadyAtHigherClass_IsFilteredToTheWantedOne()
    {
        var recorded = Channel("11HEAD0000H3ACXA", "g", Rough, startS: 0);

        var channel = Source(recorded).Find(HeadX, 180).Channel!;

        Assert.Equal(CfcFilter.Apply(recorded.Samples.Span, Dt, 180), channel.History.Values.ToArray());
    }

    [Fact]
    public void Find_AlreadyAtLowerClass_IsAbsentButPresent()
    {
        var answer = Source(Channel("11HEAD0000H3ACXC", "g", Rough)).Find(HeadX, 1000);

        Assert.Null(answer.Channel);
        Assert.True(answer.Present);
        Assert.Equal("11HEAD0000H3ACXC: already filtered at class 180, class 1000 is wanted", answer.Absent);
    }

    [Fact]
    public void Find_SeveralLetters_PrefersUnfilteredThenHighestThenLowestNumber()
    {
        var c = Channel("11HEAD0000H3ACXC", "g", Rough, number: 1);
        var a = Channel("11HEAD0000H3ACXA", "g", Rough, number: 2);
        var p = Channel("11HEAD0000H3ACXP", "g", Rough, number: 3);
        var zero = Channel("11HEAD0000H3ACX0", "g", Rough, number: 4);

        Assert.Equal(p.Code, Source(c, a, p, zero).Find(HeadX, 180).Channel!.Code);
        Assert.Equal(a.Code, Source(c, a).Find(HeadX, 180).Channel!.Code);
        Assert.Equal(zero.Code, Source(c, a, zero with { Number = 2 }, p).Find(HeadX, 180).Channel!.Code);
    }

    [Fact]
    public void Find_ChosenChannelUnfit_NeverFallsBack()
    {
        var dead = Channel("11HEAD0000H3ACXP", "g", _ => 0.25, number: 1);
        var alive = Channel("11HEAD0000H3ACXA", "g", Rough, number: 2);

        var answer = Source(dead, alive).Find(HeadX, 180);

        Assert.Null(answer.Channel);
        Assert.True(answer.Present);
        Assert.Contains("flat", answer.Absent, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_SampledTooSlowly_IsAbsentWithBothRates()
    {
        var answer = Source(Channel("11HEAD0000H3ACXP", "g", Rough, intervalS: 2e-4)).Find(HeadX, 1000);

        Assert.Equal("11HEAD0000H3ACXP: sampled at 5000 Hz, class 1000 needs at least 10000 Hz", answer.Absent);
    }

    [Fact]
    public void Find_OneSampleMissing_IsUnfit()
    {
        var samples = Enumerable.Range(0, 3001).Select(i => Rough(i * Dt)).ToArray();
        samples[1234] = double.NaN;

        var answer = Source(Channel("11HEAD0000H3ACXP", "g", samples)).Find(HeadX, 1000);

        Assert.Equal("11HEAD0000H3ACXP: sample 1235 of 3001 is missing or not a number", answer.Absent);
    }

    [Fact]
    public void Find_UnknownUnit_IsUnfitWithAnErrorOnThatChannel()
    {
        var source = Source(Channel("11HEAD0000H3ACXP", "furlong", Rough));

        Assert.Equal("11HEAD0000H3ACXP: unknown unit 'furlong'", source.Find(HeadX, 1000).Absent);
        var problem = Assert.Single(source.Channels[0].Problems, one => one.Code == "channel.unit-unknown");
        Assert.Equal(Domain.Packages.ProblemSeverity.Error, problem.Severity);
        Assert.Equal("11HEAD0000H3ACXP", problem.Channel);
    }

    [Fact]
    public void Find_UnitOfAnotherDimension_IsUnfit() =>
        Assert.Contains("does not measure dimension AC", Source(Channel("11HEAD0000H3ACXP", "kN", Rough)).Find(HeadX, 1000).Absent, StringComparison.Ordinal);

    [Fact]
    public void Find_NoTimeOfFirstSample_IsUnfit() => Assert.Equal(
        "11HEAD0000H3ACXP: no time of first sample", Source(Channel("11HEAD0000H3ACXP", "g", Rough) with { FirstSampleS = null }).Find(HeadX, 1000).Absent);

    [Fact]
    public void Find_ThreeSamples_IsUnfit() =>
        Assert.Contains("3 samples", Source(Channel("11HEAD0000H3ACXP", "g", [1, 2, 3])).Find(HeadX, 60).Absent, StringComparison.Ordinal);

    [Fact]
    public void Find_BeforeContactOnly_IsAbsent() => Assert.Equal(
        "11HEAD0000H3ACXP: no samples between 0 and 0.300 s", Source(Channel("11HEAD0000H3ACXP", "g", Rough, -0.2, -0.01)).Find(HeadX, 1000).Absent);

    [Fact]
    public void Find_FlaggedUnfit_IsAbsentWithTheEngineersReason()
    {
        ChannelFlag flag = new("11HEAD0000H3ACXP", ChannelFlagKind.Unfit, null, null, "cable torn");

        var answer = Source([flag], Channel("11HEAD0000H3ACXP", "g", Rough)).Find(HeadX, 1000);

        Assert.Equal("11HEAD0000H3ACXP: flagged unfit by an engineer: cable torn", answer.Absent);
        Assert.Null(answer.Partial);
    }

    [Fact]
    public void Find_FlaggedUnfitFromATime_KeepsThePartBeforeForBounds()
    {
        ChannelFlag flag = new("11HEAD0000H3ACXP", ChannelFlagKind.Unfit, 0.080, null, "cable torn");
        var wild = Channel("11HEAD0000H3ACXP", "g", t => t < 0.080 ? Pulse(t) : 900);
        var calm = Channel("11HEAD0000H3ACXP", "g", t => t < 0.080 ? Pulse(t) : -5);

        var answer = Source([flag], wild).Find(HeadX, 1000);

        Assert.Null(answer.Channel);
        Assert.Equal("11HEAD0000H3ACXP: flagged unfit from 80 ms on: cable torn", answer.Absent);
        Assert.Equal(800, answer.Partial!.History.Count); // 0 … 79.9 ms
        Assert.Equal(0.080, answer.Partial.ReliableUntilS);
        Assert.Equal(Source([flag], calm).Find(HeadX, 1000).Partial!.History.Values.ToArray(), answer.Partial.History.Values.ToArray());
    }

    [Fact]
    public void Find_FlaggedUnfitAfterTheWindow_IsUsedWhole()
    {
        ChannelFlag flag = new("11HEAD0000H3ACXP", ChannelFlagKind.Unfit, 0.3001, null, "cable torn");

        var channel = Source([flag], Channel("11HEAD0000H3ACXP", "g", Pulse, endS: 0.350)).Find(HeadX, 1000).Channel!;

        Assert.Equal(3001, channel.History.Count);
        Assert.Null(channel.ReliableUntilS);
    }

    [Fact]
    public void Find_PolarityAndScaleFlags_Multiply()
    {
        ChannelFlag polarity = new("11HEAD0000H3ACXP", ChannelFlagKind.Polarity, null, -1, "mounted the other way");
        ChannelFlag scale = new("11HEAD0000H3ACXP", ChannelFlagKind.Scale, null, 2, "sensitivity of the sheet");
        var recorded = Channel("11HEAD0000H3ACXP", "g", Pulse);

        var plain = Source(recorded).Find(HeadX, 1000).Channel!.History.Values.ToArray();
        var corrected = Source([polarity, scale], recorded).Find(HeadX, 1000).Channel!.History.Values.ToArray();

        Assert.All(Enumerable.Range(0, plain.Length), i => Assert.Equal(-2 * plain[i], corrected[i], 1e-11));
    }

    [Fact]
    public void Find_SameQuestionTwice_GivesTheSameSamples()
    {
        var source = Source(Channel("11HEAD0000H3ACXP", "g", Pulse, startS: 0, endS: 0.300));

        Assert.True(source.Find(HeadX, 1000).Channel!.History.Values.Span == source.Find(HeadX, 1000).Channel!.History.Values.Span);
    }

    [Fact]
    public void Find_UnderACommaCulture_GivesTheSameSamplesAndWords()
    {
        var before = CultureInfo.CurrentCulture;
        var expected = Source(Channel("11HEAD0000H3ACXP", "g", Rough, intervalS: 1.5e-4));
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            var source = Source(Channel("11HEAD0000H3ACXP", "g", Rough, intervalS: 1.5e-4));
            Assert.Equal(expected.Find(HeadX, 1000).Absent, source.Find(HeadX, 1000).Absent);
            Assert.Contains("6666.67 Hz", source.Find(HeadX, 1000).Absent, StringComparison.Ordinal);
            Assert.Equal(expected.Find(HeadX, 180).Channel!.History.Values.ToArray(), source.Find(HeadX, 180).Channel!.History.Values.ToArray());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static double Pulse(double t) => 0.01 - (t is > 0 and < 0.1 ? 60 * Math.Sin(Math.PI * t / 0.1) : 0);

    private static double Rough(double t) => (20 * Math.Sin(300 * t)) + (5 * Math.Cos(4000 * t)) + t;
}
