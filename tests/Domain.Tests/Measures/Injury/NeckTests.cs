using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Measures.Injury;

public sealed class NeckTests
{
    // standards.md §16 case 5: (Fz N, My N·m, Fx N) → My_oc, Nij of both dummies, mode.
    [Theory]
    [InlineData(2000, 50, -300, 55.334, 0.47235513, 0.82352026, "tension-flexion")]
    [InlineData(2000, -30, 400, -37.112, 0.56876206, 1.02043716, "tension-extension")]
    [InlineData(-1500, 60, 100, 58.222, 0.43131940, 0.76222374, "compression-flexion")]
    [InlineData(-2500, -40, -250, -35.555, 0.66921453, 1.17500154, "compression-extension")]
    [InlineData(3300, 0, 0, 0, 0.48486629, 0.76976907, "tension-flexion")]
    [InlineData(1000, -57, 0, -57, 0.56915140, 1.08400962, "tension-extension")]
    public void Reduce_OneInstant_MeetsCheckCase(double fzN, double myNm, double fxN, double moment, double nij50, double nij5, string mode)
    {
        var channels = new FakeChannels(10_000).Neck(3, _ => fzN, _ => myNm, _ => fxN);

        Near.To(nij50, channels.Reduce("neck.nij").Value, Near.EightDecimals);
        Near.To(nij5, channels.Reduce("neck.nij", DummyType.HF).Value, Near.EightDecimals);
        Assert.Equal(mode, channels.Reduce("neck.nij").Detail);
        Near.To(Math.Max(moment, 0), channels.Reduce("neck.flexion").Value, 1e-11);
        Near.To(Math.Max(-moment, 0), channels.Reduce("neck.extension").Value, 1e-11);
    }

    // standards.md §16 case 5, history; the larger of the two modes printed there.
    [Theory]
    [InlineData(DummyType.H3, 0.52570243, 0.07015)]
    [InlineData(DummyType.HF, 0.93428250, 0.07125)]
    public void Reduce_SineHistory_MeetsCheckCase(DummyType dummy, double nij, double atS)
    {
        var channels = new FakeChannels(20_000).Neck(
            2001, t => 2500 * Math.Sin(Math.PI * t / 0.1), t => 40 * Math.Sin(2 * Math.PI * t / 0.1), t => -500 * Math.Sin(Math.PI * t / 0.1));

        var measure = channels.Reduce("neck.nij", dummy);

        Near.To(nij, measure.Value, Near.EightDecimals);
        Near.To(atS, measure.FromS, 1e-9);
        Assert.Equal("tension-extension", measure.Detail);
    }

    // The other mode of the same history, by leaving only the half in which the moment bends forward.
    [Theory]
    [InlineData(DummyType.H3, 0.45774390, 0.03615)]
    [InlineData(DummyType.HF, 0.77953610, 0.03470)]
    public void Reduce_FlexionHalfOfHistory_MeetsCheckCase(DummyType dummy, double nij, double atS)
    {
        var channels = new FakeChannels(20_000).Neck(
            1001, t => 2500 * Math.Sin(Math.PI * t / 0.1), t => 40 * Math.Sin(2 * Math.PI * t / 0.1), t => -500 * Math.Sin(Math.PI * t / 0.1));

        var measure = channels.Reduce("neck.nij", dummy);

        Near.To(nij, measure.Value, Near.EightDecimals);
        Near.To(atS, measure.FromS, 1e-9);
        Assert.Equal("tension-flexion", measure.Detail);
    }

    [Fact]
    public void Reduce_Forces_AreTakenBySign()
    {
        var channels = new FakeChannels(10_000).Neck(1001, t => (3000 * Math.Sin(2 * Math.PI * t / 0.1)) - 500, _ => 0, t => -1200 * Math.Sin(Math.PI * t / 0.1));

        Near.Relative(2.5, channels.Reduce("neck.tension").Value, 1e-12);
        Near.To(0.025, channels.Reduce("neck.tension").FromS, 1e-12);
        Near.Relative(3.5, channels.Reduce("neck.compression").Value, 1e-12);
        Near.To(0.075, channels.Reduce("neck.compression").FromS, 1e-12);
        Near.Relative(1.2, channels.Reduce("neck.shear").Value, 1e-12);
    }

    [Fact]
    public void Reduce_ForceThatNeverPulls_IsZeroWithoutInstant()
    {
        var measure = new FakeChannels(10_000).Neck(10, _ => -100, _ => 0, _ => 0).Reduce("neck.tension");

        Assert.Equal(0, measure.Value);
        Assert.Null(measure.FromS);
    }

    // Peak forces at class 1000, everything in Nij and the moments at class 600 (49 CFR 571.208 S6.6, S6.7).
    [Fact]
    public void Reduce_AsksForTheClassOfEachMeasure()
    {
        var channels = new FakeChannels(10_000).Neck(10, _ => 100, _ => 1, _ => 1);

        Assert.Equal(1000, channels.Reduce("neck.tension").FilterClass);
        Assert.Equal(1000, channels.Reduce("neck.shear").FilterClass);
        Assert.Equal(600, channels.Reduce("neck.nij").FilterClass);
        Assert.Equal(600, channels.Reduce("neck.flexion").FilterClass);
    }
}
