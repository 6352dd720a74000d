using Toepan.Domain.Channels;
using Toepan.Domain.Channels.Quality;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Xunit;
using static Toepan.Domain.Tests.Channels.TestPackages;

namespace Toepan.Domain.Tests.Channels;

/// <summary>Quality checks of methods edition 1, "Before anything" 7; common practice, no source.</summary>
public sealed class QualityTests
{
    [Fact]
    public void Prepare_SoundChannel_HasNoProblem() => Assert.Empty(Prepare(Sound()).Problems);

    [Fact]
    public void Prepare_AllSamplesEqual_IsUnfit()
    {
        var channel = Prepare(Channel("11CHST0003H3DSXP", "mm", _ => 3.5));

        Assert.Equal("11CHST0003H3DSXP: flat: all 3601 samples read 3.5 mm", channel.Unfit);
        Assert.Equal(ProblemSeverity.Error, Only(channel, "channel.flat").Severity);
    }

    [Fact]
    public void Prepare_FiveSamplesAtTheMaximum_AreClippedWithTheirStretch()
    {
        var channel = Prepare(Channel("11HEAD0000H3ACXP", "g", t => Math.Max(Wave(t), -50)));

        Assert.Contains("clipped at -50 g", Only(channel, "channel.clipped").Message, StringComparison.Ordinal);
        Assert.Null(channel.Unfit);
        var stretch = Assert.Single(channel.Clipped);
        // 60·sin(πt/0.1) ≥ 50 from asin(5/6)·0.1/π = 31.36 ms on (closed form).
        Assert.Equal(0.0314, -0.060 + (stretch.First * Dt), 1e-9);
        Assert.Equal(0.0686, -0.060 + (stretch.Last * Dt), 1e-9);
    }

    [Fact]
    public void Find_FourSamplesAtTheMaximum_AreNotClipped() => Assert.Empty(Clipping.Find([0, 1, 5, 5, 5, 5, 1, 0], null));

    [Fact]
    public void Find_FiveSamplesAtTheMaximum_AreClipped() => Assert.Equal([new(2, 6)], Clipping.Find([0, 1, 5, 5, 5, 5, 5, 1, 0], null));

    [Fact]
    public void Find_JitterWithinTheAmplitudeClass_IsClipped() =>
        Assert.Equal([new(1, 5)], Clipping.Find([0, 499.9999, 500, 499.9999, 500, 499.9998, 1], 500));

    [Fact]
    public void Find_RestLevelRepeated_IsNotClipped() => Assert.Empty(Clipping.Find([0, 0, 0, 0, 0, 0, -3, -7, -3, 0, 0, 0, 0, 0], null));

    [Fact]
    public void Find_BothStops_AreFoundInOrder() =>
        Assert.Equal([new(1, 5), new(7, 11)], Clipping.Find([0, 9, 9, 9, 9, 9, 0, -9, -9, -9, -9, -9, 0], null));

    [Fact]
    public void First_SampleThatJumpsAndReturns_IsASpike()
    {
        Assert.Equal(3, Spikes.First([0, 1, 2, 40, 3, 2, 1]));
        Assert.Equal(2, Spikes.First([5, 4, -60, 3, 5]));
        Assert.Null(Spikes.First([0, 1, 2, 40, 40, 2, 1]));
        Assert.Null(Spikes.First([0, 40]));
    }

    [Fact]
    public void Prepare_MainPeakAgainstExpectation_IsSuspect()
    {
        ProcedureChannel expected = new("HEAD0000", "ACX", PerOccupant: true, ExpectedPeak: -1);
        var reversed = Channel("11HEAD0000H3ACXP", "g", t => -Wave(t));

        var suspect = new ChannelSource(Package(reversed), Procedure(expected), []).Channels[0];
        var corrected = new ChannelSource(
            Package(reversed), Procedure(expected), [new("11HEAD0000H3ACXP", ChannelFlagKind.Polarity, null, -1, "reversed")]).Channels[0];

        Assert.Equal("negative", Only(suspect, "channel.polarity").Limit);
        Assert.Null(suspect.Unfit);
        Assert.Empty(corrected.Problems);
    }

    [Fact]
    public void Prepare_EndsBefore150Milliseconds_IsTooShort()
    {
        Assert.Contains("ends at 149.9 ms", Only(Prepare(Channel("11HEAD0000H3ACXP", "g", Wave, endS: 0.1499)), "channel.short").Message, StringComparison.Ordinal);
        Assert.Empty(Prepare(Channel("11HEAD0000H3ACXP", "g", Wave, endS: 0.150)).Problems);
    }

    [Fact]
    public void Prepare_CountOtherThanStated_UsesTheLinesWithAProblem()
    {
        var problem = Only(Prepare(Sound() with { StatedCount = 4000 }), "channel.count");

        Assert.Equal(("3601", "4000"), (problem.Value, problem.Limit));
    }

    [Theory]
    [InlineData(0.55, true)]
    [InlineData(0.45, false)]
    public void Prepare_ZeroDriftsByPercentOfRange_IsAProblemOverHalf(double percent, bool reported)
    {
        // Linear drift over the 451 window samples: the halves (225 and 226 samples) differ by 225.5 steps of the ramp, a range of 60 g (closed form).
        var perSecond = percent / 100 * 60 / (225.5 * Dt);
        var channel = Prepare(Channel("11HEAD0000H3ACXP", "g", t => t < 0 ? perSecond * (t + 0.0275) : Wave(t)));

        Assert.Equal(reported, channel.Problems.Any(problem => problem.Code == "channel.drift"));
    }

    [Fact]
    public void Prepare_LetterAndHeaderDisagree_TakesTheLowerWithAProblem()
    {
        var channel = Prepare(Channel("11HEAD0000H3ACXA", "g", Wave) with { HeaderFilterClass = "180" });

        Assert.Equal(180, channel.RecordedClass);
        Only(channel, "channel.class-disagrees");
    }

    [Fact]
    public void Prepare_CodeOfWrongLength_IsKeptAndAnswersNothing()
    {
        var source = Source(Channel("11HEAD0000H3ACX", "g", Wave));

        Only(source.Channels[0], "channel.code");
        Assert.False(source.Has(ChannelPattern.Dummy(1, "HEAD0000", "ACX")));
    }

    [Fact]
    public void Prepare_AbsurdReading_IsUnfit() =>
        Assert.Contains("beyond anything measurable", Prepare(Channel("11HEAD0000H3ACXP", "g", t => Wave(t) * 1e200)).Unfit, StringComparison.Ordinal);

    [Fact]
    public void Prepare_InfiniteScale_IsUnfitAndNeverInfinite()
    {
        ChannelFlag flag = new("11HEAD0000H3ACXP", ChannelFlagKind.Scale, null, 1e300, "typing error");

        Assert.NotNull(ChannelPreparer.Prepare(Channel("11HEAD0000H3ACXP", "g", t => Wave(t) * 1e10), [flag], null).Unfit);
    }

    private static RecordedChannel Sound() => Channel("11HEAD0000H3ACXP", "g", t => Wave(t) + (0.001 * Math.Sin(5000 * t)));

    private static double Wave(double t) => t is > 0 and < 0.1 ? -60 * Math.Sin(Math.PI * t / 0.1) : 0;

    private static PreparedChannel Prepare(RecordedChannel channel) => ChannelPreparer.Prepare(channel, [], null);

    private static Problem Only(PreparedChannel channel, string code)
    {
        var problem = Assert.Single(channel.Problems);
        Assert.Equal(code, problem.Code);
        return problem;
    }
}
