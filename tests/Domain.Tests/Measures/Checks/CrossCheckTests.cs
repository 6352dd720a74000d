using Toepan.Domain.Measures;
using Toepan.Domain.Measures.Checks;
using Toepan.Domain.Measures.Pulse;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Xunit;
using static Toepan.Domain.Tests.Channels.TestPackages;

namespace Toepan.Domain.Tests.Measures.Checks;

/// <summary>Cross-checks of methods edition 1 (common practice, no source); expected values in closed form.</summary>
public sealed class CrossCheckTests
{
    private const double G0 = 9.80665;
    private const double V0 = 64.4 / 3.6;

    [Theory]
    [InlineData(1.10, true)]
    [InlineData(0.95, false)]
    [InlineData(1.30, false)]
    public void VelocityRatio_SpeedLost_IsHeldToItsBounds(double ratio, bool agrees)
    {
        var check = One(new VelocityRatio(), Stop(ratio));

        Assert.Equal(ratio, check.Value!.Value, 2e-6); // trapezoid at 10 kHz: (π·dt/T)²/12
        Assert.Equal(agrees, check.Agrees);
        Assert.Equal(agrees, CrossChecks.ProblemOf(check) is null);
    }

    [Fact]
    public void VelocityRatio_NoPulse_IsNotCheckable()
    {
        var check = One(new VelocityRatio(), Channel("11HEAD0000H3ACXA", "g", t => t));

        Assert.Null(check.Agrees);
        Assert.Contains("no vehicle acceleration", check.Note, StringComparison.Ordinal);
        Assert.Null(CrossChecks.ProblemOf(check));
    }

    [Fact]
    public void LeftRightVelocity_NoYawChannel_IsNotSeparable()
    {
        var check = One(new LeftRightVelocity(), Constant("10BPILLE0000ACXC", -10), Constant("10BPILRI0000ACXC", -11, 2));

        Assert.Equal(0.1 * G0, check.Value!.Value, 2e-3); // 1 g over 100 ms
        Assert.Null(check.Agrees);
        Assert.Contains("not separable", check.Note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.65, true)] // w = 0.98/0.65 = 1.5 m
    [InlineData(-0.65, false)]
    public void LeftRightVelocity_YawRate_ExplainsItOrNot(double yaw, bool agrees) => Assert.Equal(
        agrees,
        One(
            new LeftRightVelocity(), Constant("10BPILLE0000ACXC", -10), Constant("10BPILRI0000ACXC", -11, 2),
            Channel("10VEHC000000AVZC", "rad/s", t => yaw * t / 0.1, number: 3)).Agrees);

    [Theory]
    [InlineData(0.002, true)]
    [InlineData(0.008, false)]
    [InlineData(-0.004, false)]
    public void PulseOnset_RampFromAnInstant_IsFoundWhereItPassesHalfAG(double startS, bool agrees)
    {
        // −a rises 2 g a millisecond from the start: 0.5 g are passed 0.25 ms later.
        var check = One(new PulseOnset(), Channel("10VEHC000000ACXC", "g", t => -2000 * Math.Clamp(t - startS, 0, 0.02)));

        Assert.Equal((startS * 1000) + 0.25, check.Value!.Value, 0.11);
        Assert.Equal(agrees, check.Agrees);
    }

    [Theory]
    [InlineData(1.0, true)]
    [InlineData(0.7, false)]
    public void PelvisVelocity_ShareOfImpactSpeed_IsHeldToItsBounds(double ratio, bool agrees)
    {
        var check = One(new PelvisVelocity(), Stop(1.1), Stop(ratio, "11PELV0000H3ACXC", 2));

        Assert.Equal(ratio, check.Value!.Value, 1e-6);
        Assert.Equal((agrees, 1), (check.Agrees!.Value, check.Position!.Value));
    }

    [Theory]
    [InlineData(0.92, true)]
    [InlineData(0.85, false)]
    public void RedundantPeaks_SecondAccelerometer_AgreesWithinTenPercent(double gain, bool agrees)
    {
        var check = One(new RedundantPeaks(), Stop(1.1, "11CHST0000H3ACXC"), Stop(1.1 * gain, "11CHST0001H3ACXC", 2));

        Assert.Equal(100 * (1 - gain), check.Value!.Value, 1e-9);
        Assert.Equal(agrees, check.Agrees);
    }

    [Fact]
    public void RedundantPeaks_UpperAndLowerPlace_AreNotRedundant() =>
        Assert.Empty(Run(new RedundantPeaks(), Stop(1, "11TIBILEUPH3ACXC"), Stop(0.2, "11TIBILELOH3ACXC", 2), Stop(1, "11CHST0000H3ACYC", 3)));

    [Theory]
    [InlineData(4.9, true)]
    [InlineData(5.1, false)]
    [InlineData(0.19, false)]
    public void FemurBalance_Ratio_IsHeldToItsBounds(double ratio, bool agrees)
    {
        var check = One(new FemurBalance(), Femur("LE", ratio), Femur("RI", 1, 2));

        Assert.Equal(ratio, check.Value!.Value, 1e-9);
        Assert.Equal(agrees, check.Agrees);
    }

    [Fact]
    public void FemurBalance_RightNeverCompressed_Disagrees()
    {
        var check = One(new FemurBalance(), Femur("LE", 3), Femur("RI", -1, 2));

        Assert.Null(check.Value);
        Assert.False(check.Agrees);
        Assert.NotNull(CrossChecks.ProblemOf(check));
    }

    [Theory]
    [InlineData(-0.19, true)]
    [InlineData(-0.25, false)]
    public void BeltTension_LeastForce_IsNeverFarBelowZero(double least, bool agrees)
    {
        var check = One(new BeltTension(), Channel("11SEBE0003H3FO0D", "kN", t => t < 0 ? 0 : t < 0.1 ? 5 * Math.Sin(Math.PI * t / 0.1) : least));

        Assert.Equal(least, check.Value!.Value, 1e-12);
        Assert.Equal(agrees, check.Agrees);
    }

    [Theory]
    [InlineData(1.01, true)]
    [InlineData(1.03, false)]
    public void RecordedResultant_AgainstComponents_AgreesWithinTwoPercent(double gain, bool agrees)
    {
        var check = One(
            new RecordedResultant(), Sine("11HEAD0000H3ACXA", 3, 1), Sine("11HEAD0000H3ACYA", 4, 2), Sine("11HEAD0000H3ACZA", 12, 3), Sine("11HEAD0000H3ACRA", 13 * gain, 4));

        Assert.Equal(100 * (1 - (1 / gain)), check.Value!.Value, 1e-9);
        Assert.Equal(agrees, check.Agrees);
    }

    [Fact]
    public void HeadContactBalance_ForceTheNeckDoesNotCarry_IsAContact()
    {
        // −30 g · 4.54 kg = −1335.7 N, of which the neck carries −300 N: contact 1035.7 N from 40 to 60 ms (closed form).
        var (contacts, checks) = HeadContactBalance.Run(Context(Finding(50), Head(), Neck(-0.3)));

        var contact = Assert.Single(contacts);
        Assert.Equal(0.040, contact.FromS, 1e-3);
        Assert.Equal(0.060, contact.ToS, 1e-3);
        Assert.InRange(contact.PeakN, 1035.6, 1150); // the filter overshoots a step by a few per cent
        Assert.All(checks, check => Assert.True(check.Agrees));
    }

    [Fact]
    public void HeadContactBalance_NeckCarriesAll_IsNoContact()
    {
        var (contacts, checks) = HeadContactBalance.Run(Context(Finding(50), Head(), Neck(-30 * 4.54 * G0 / 1000)));

        Assert.Empty(contacts);
        var unfelt = Assert.Single(checks, check => check.Agrees == false);
        Assert.Equal(HeadContactBalance.UnfeltCheck, unfelt.Check);
        Assert.Equal(ProblemSeverity.Warning, CrossChecks.ProblemOf(unfelt)!.Severity);
    }

    [Fact]
    public void HeadContactBalance_FilmSawItAtAnotherTime_DisagreesBothWays()
    {
        var (_, checks) = HeadContactBalance.Run(Context(Finding(120), Head(), Neck(-0.3)));

        Assert.All(checks, check => Assert.False(check.Agrees));
    }

    [Fact]
    public void HeadContactBalance_NoNeckCell_IsNotCheckable() =>
        Assert.All(HeadContactBalance.Run(Context(Finding(50), Head())).Checks, check => Assert.Null(check.Agrees));

    private static RecordedChannel Head() => Channel("11HEAD0000H3ACXP", "g", t => t is >= 0.040 and < 0.060 ? -30 : 0);

    private static RecordedChannel Neck(double kn) => Channel("11NECKUP00H3FOXP", "kN", t => t is >= 0.040 and < 0.060 ? kn : 0, number: 2);

    private static Finding[] Finding(double ms) => [new(ms, "top", "head-strike", "head", FindingSeverity.Severe, "rim", null, 2)];

    // A half-sine of 100 ms that takes off the given share of the impact speed, recorded at class 180.
    private static RecordedChannel Stop(double ratio, string code = "10VEHC000000ACXC", int number = 1)
    {
        var peak = ratio * V0 * Math.PI / (2 * 0.1 * G0);
        return Channel(code, "g", t => t is > 0 and < 0.1 ? -peak * Math.Sin(Math.PI * t / 0.1) : 0, number: number);
    }

    private static RecordedChannel Constant(string code, double g, int number = 1) => Channel(code, "g", t => t < 0 ? 0 : g, number: number);

    private static RecordedChannel Femur(string side, double kn, int number = 1) =>
        Channel($"11FEMR{side}00H3FOZB", "kN", t => t is > 0 and < 0.1 ? -kn * Math.Sin(Math.PI * t / 0.1) : 0, number: number);

    private static RecordedChannel Sine(string code, double peak, int number) =>
        Channel(code, "g", t => t is > 0 and < 0.1 ? peak * Math.Sin(Math.PI * t / 0.1) : 0, number: number);

    private static CrossCheck One(ICrossCheck check, params RecordedChannel[] channels) => Assert.Single(Run(check, channels));

    private static List<CrossCheck> Run(ICrossCheck check, params RecordedChannel[] channels) => check.Run(Context([], channels)).ToList();

    private static CheckContext Context(Finding[] findings, params RecordedChannel[] channels)
    {
        var source = Source(channels);
        return new(source, new PulseContext(Conduct(64.4m), Procedure(), source), [new Occupant(1, "driver", DummyType.H3)], findings);
    }
}
