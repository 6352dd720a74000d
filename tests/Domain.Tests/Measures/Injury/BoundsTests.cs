using Toepan.Domain.Channels;
using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Measures.Injury;

/// <summary>A bound is proved by the channel it came from: cut a known signal, then hold the bound against the uncut value.</summary>
public sealed class BoundsTests
{
    private const double StopG = 60;

    private static double[] Pulse(FakeChannels channels, double peak) => channels.Sample(601, t => peak * Math.Sin(Math.PI * t / 0.06));

    private static (double[] Values, ClippedStretch Stretch) Clip(double[] values, double stop, double rateHz)
    {
        var beyond = values.Select((v, i) => (v, i)).Where(pair => Math.Abs(pair.v) >= stop).Select(pair => pair.i).ToList();
        return ([.. values.Select(v => Math.Clamp(v, -stop, stop))], new(beyond[0] / rateHz, beyond[^1] / rateHz));
    }

    [Theory]
    [InlineData("head.hic15")]
    [InlineData("head.hic36")]
    [InlineData("head.a3ms")]
    [InlineData("head.peak")]
    public void Resultant_ClippedAxis_ValueStandsAndTrueValueIsAtLeastIt(string code)
    {
        var whole = new FakeChannels(10_000);
        whole.Head(Pulse(whole, 90));
        var (values, stretch) = Clip(Pulse(whole, 90), StopG, 10_000);
        var clipped = new FakeChannels(10_000)
            .With("HEAD0000", "ACX", values, stretch).With("HEAD0000", "ACY", new double[601]).With("HEAD0000", "ACZ", new double[601]);

        var measure = clipped.Reduce(code);

        Assert.Null(measure.Absent);
        Assert.Equal(measure.Value, measure.Bounds?.AtLeast);
        Assert.Null(measure.Bounds!.AtMost);
        Assert.Contains("11HEAD0000H3ACX0 reached the end of its range", measure.Bounds.Because, StringComparison.Ordinal);
        Assert.True(whole.Reduce(code).Value > measure.Bounds.AtLeast);
    }

    [Theory]
    [InlineData("head.hic15")]
    [InlineData("head.hic36")]
    [InlineData("head.a3ms")]
    [InlineData("head.peak")]
    public void Resultant_DeadAxis_IsAbsentAndBoundedByTheOthers(string code)
    {
        var whole = new FakeChannels(10_000);
        whole.Axes("HEAD0000", Pulse(whole, 60), Pulse(whole, 20), Pulse(whole, 10));
        var dead = new FakeChannels(10_000).Unfit("HEAD0000", "ACX")
            .With("HEAD0000", "ACY", Pulse(whole, 20)).With("HEAD0000", "ACZ", Pulse(whole, 10));
        var others = new FakeChannels(10_000);
        others.Axes("HEAD0000", new double[601], Pulse(whole, 20), Pulse(whole, 10));

        var measure = dead.Reduce(code);

        Assert.Null(measure.Value);
        Assert.Contains("11HEAD0000H3ACX0: flat", measure.Absent, StringComparison.Ordinal);
        Assert.Equal(others.Reduce(code).Value, measure.Bounds?.AtLeast);
        Assert.True(whole.Reduce(code).Value > measure.Bounds!.AtLeast);
    }

    [Fact]
    public void Resultant_NothingUsable_HasNoBound()
    {
        var measure = new FakeChannels(10_000).Unfit("HEAD0000", "ACX").Reduce("head.hic15");

        Assert.Null(measure.Bounds);
        Assert.Contains("11HEAD0000H3ACX0", measure.Absent, StringComparison.Ordinal);
        Assert.Contains("11HEAD0000??ACY?", measure.Absent, StringComparison.Ordinal);
    }

    [Fact]
    public void Resultant_AxisEndsEarly_IsBoundedByBothParts()
    {
        var whole = new FakeChannels(10_000);
        whole.Axes("HEAD0000", Pulse(whole, 90), Pulse(whole, 20));
        var ending = new FakeChannels(10_000).UnfitFrom("HEAD0000", "ACX", 0.02, Pulse(whole, 90))
            .With("HEAD0000", "ACY", Pulse(whole, 20)).With("HEAD0000", "ACZ", new double[601]);

        var measure = ending.Reduce("head.peak");

        Assert.NotNull(measure.Absent);
        Near.Relative(Math.Sqrt((90 * 90) + (20 * 20)) * Math.Sin(Math.PI * 0.0199 / 0.06), measure.Bounds?.AtLeast, 1e-11);
        Assert.True(whole.Reduce("head.hic36").Value > ending.Reduce("head.hic36").Bounds?.AtLeast);
    }

    [Fact]
    public void Signed_ClippedOnItsOwnSideOnly_IsBounded()
    {
        double[] values = [0, 3, 3, 0, -1, 0];
        var channels = new FakeChannels(10_000).With("NECKUP00", "FOZ", values, new ClippedStretch(1e-4, 2e-4));

        Assert.Equal(3, channels.Reduce("neck.tension").Bounds?.AtLeast);
        Assert.Equal(1, channels.Reduce("neck.compression").Value);
        Assert.Null(channels.Reduce("neck.compression").Bounds);
    }

    [Fact]
    public void Signed_ReliableUntil_IsAtLeastTheMaximumSoFar()
    {
        var channels = new FakeChannels(10_000).UnfitFrom("FEMRLE00", "FOZ", 3e-4, [0, -4, -2, -9, 0]);

        var measure = channels.Reduce("femur.left.compression");

        Assert.Null(measure.Value);
        Assert.Equal(4, measure.Bounds?.AtLeast);
        Assert.Contains("flagged unfit", measure.Absent, StringComparison.Ordinal);
    }

    // Shear clipped forwards lowers the flexion it is subtracted from: nothing can be promised of those instants, but all of extension can.
    [Fact]
    public void NeckMoments_ClippedShear_BoundsOnlyWhereItsSignAllows()
    {
        var clip = new ClippedStretch(1e-4, 2e-4);
        var channels = new FakeChannels(10_000)
            .With("NECKUP00", "FOX", [0, 2, 2, 0], clip).With("NECKUP00", "MOY", [0, 60, 10, 20]);

        var flexion = channels.Reduce("neck.flexion");
        var extension = channels.Reduce("neck.extension");

        Near.Relative(60 - 35.56, flexion.Value, 1e-11);
        Assert.Equal(20, flexion.Bounds?.AtLeast);
        Near.Relative(25.56, extension.Value, 1e-11);
        Assert.Equal(extension.Value, extension.Bounds?.AtLeast);
    }

    [Fact]
    public void Nij_MomentMissing_IsAtLeastTheForceAlone()
    {
        var measure = new FakeChannels(10_000).With("NECKUP00", "FOZ", [0, 3.403, 0]).Reduce("neck.nij");

        Assert.NotNull(measure.Absent);
        Assert.Equal(0.5, measure.Bounds?.AtLeast);
    }

    // The rate at a stop reads zero: only instants whose five samples are all true prove anything.
    [Fact]
    public void Viscous_ClippedDeflection_BoundLeavesTheStretchOut()
    {
        var whole = new FakeChannels(10_000);
        var pressed = whole.Sample(1001, t => -60 * Math.Pow(Math.Sin(Math.PI * t / 0.1), 2));
        whole.With("CHST0000", "DSX", pressed);
        var (values, stretch) = Clip(pressed, 40, 10_000);

        var measure = new FakeChannels(10_000).With("CHST0000", "DSX", values, stretch).Reduce("chest.viscous");

        Assert.NotNull(measure.Bounds);
        Assert.True(measure.Bounds.AtLeast > 0.8 * whole.Reduce("chest.viscous").Value);
        Assert.True(measure.Bounds.AtLeast <= whole.Reduce("chest.viscous").Value);
        Assert.Equal(40, new FakeChannels(10_000).With("CHST0000", "DSX", values, stretch).Reduce("chest.deflection").Bounds?.AtLeast);
    }

    [Fact]
    public void Risk_MissingRegion_LiesBetweenNothingAndCertainty()
    {
        var risk = new FakeChannels(10_000).Reduce("risk.chest");

        Assert.Contains("chest.deflection", risk.Absent, StringComparison.Ordinal);
        Assert.Equal(0, risk.Bounds?.AtLeast);
        Assert.Equal(1, risk.Bounds?.AtMost);
    }

    [Fact]
    public void Risk_ClippedLoad_LiesBetweenItsRiskAndCertainty()
    {
        var channels = new FakeChannels(10_000).With("CHST0000", "DSX", [0, -50, -50, 0, 0], new ClippedStretch(1e-4, 2e-4));

        var risk = channels.Reduce("risk.chest");

        Assert.Equal(risk.Value, risk.Bounds?.AtLeast);
        Assert.Equal(1, risk.Bounds?.AtMost);
        Assert.Contains("chest.deflection is known from below only", risk.Bounds!.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void Risk_OneOfSeveralLoadsMissing_IsAtLeastThatOfTheRest()
    {
        var channels = new FakeChannels(10_000).With("NECKUP00", "FOZ", [0, 4.17, 0]);

        var risk = channels.Reduce("risk.neck");

        Assert.Contains("neck.nij", risk.Absent, StringComparison.Ordinal);
        Near.To(0.25526048, risk.Bounds?.AtLeast, Near.EightDecimals);
    }

    [Fact]
    public void Components_StartingApart_AreAbsentWithoutAnInventedBound()
    {
        var apart = new FakeChannels(10_000) { StartS = 0 };
        var later = new FakeChannels(10_000) { StartS = 0.01 };
        later.With("HEAD0000", "ACX", Pulse(later, 50));
        apart.With("HEAD0000", "ACY", Pulse(apart, 10)).With("HEAD0000", "ACZ", Pulse(apart, 10));
        var both = new Joined(later, apart);

        var measure = Toepan.Domain.Measures.Injury.OccupantMeasures.Reduce(new(new(1, "driver", DummyType.H3), both)).Single(m => m.Code == "head.peak");

        Assert.Contains("start at", measure.Absent, StringComparison.Ordinal);
        Assert.Null(measure.Bounds);
    }

    private sealed class Joined(FakeChannels first, FakeChannels second) : IChannelSource
    {
        public ChannelAnswer Find(ChannelPattern pattern, int filterClass) =>
            (first.Has(pattern) ? first : second).Find(pattern, filterClass);

        public bool Has(ChannelPattern pattern) => first.Has(pattern) || second.Has(pattern);
    }
}
