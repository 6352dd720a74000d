using Toepan.Domain.Measures;
using Toepan.Domain.Measures.Pulse;
using Toepan.Domain.Packages;
using Xunit;
using static Toepan.Domain.Tests.Channels.TestPackages;

namespace Toepan.Domain.Tests.Measures.Pulse;

/// <summary>
/// Vehicle measures against closed forms and standards.md §10 and §16-10. Channels are recorded at the wanted class, so that the filter
/// leaves the closed form alone; integrals are then held to the error of the trapezoid at 100 kHz.
/// </summary>
public sealed class PulseMeasureTests
{
    private const double V0 = 17.8816; // 40 mph, exact
    private const double G0 = 9.80665;
    private const double FineS = 1e-5;

    [Fact]
    public void Reduce_ConstantTenG_HasTheOlcOfTheClosedForm()
    {
        var olc = new VehicleOlc().Reduce(Context(_ => -10, V0));

        Assert.Equal(12.76595745, olc.Value!.Value, 5e-9);
        Assert.Equal(0.03640922, olc.FromS!.Value, 5e-9);
        Assert.Equal(0.16804254, olc.ToS!.Value, 5e-9);
    }

    [Fact]
    public void Reduce_ConstantTenG_OffTheGrid_HasTheSameOlc()
    {
        // v is linear and x quadratic between samples, so a coarse grid gives the closed form to rounding.
        var olc = new VehicleOlc().Reduce(Context(_ => -10, V0, intervalS: 5.3e-4));

        Assert.Equal(10 * (1 + (0.065 / 0.235)), olc.Value!.Value, 1e-10);
        Assert.Equal(Math.Sqrt(0.13 / (10 * G0)), olc.FromS!.Value, 1e-12);
    }

    [Fact]
    public void Reduce_ConstantTenG_StopsAfterTheClosedFormStroke()
    {
        var stroke = new VehicleStroke().Reduce(Context(t => t <= V0 / (10 * G0) ? -10 : 0, V0));

        Assert.Equal(1630.27955, stroke.Value!.Value, 1e-3);
        Assert.Equal(0.18234157, stroke.ToS!.Value, 1.5e-5);
        Assert.Equal(("mm", 180), (stroke.Unit, stroke.FilterClass!.Value));
    }

    [Theory]
    [InlineData(28, 0.110, V0, 19.22877046, 0.92616011, 0.09124077, 29.62138014, 0.03748431, 0.10302479)]
    [InlineData(30, 0.100, 18.72932187, 18.72932187, 0.93646609, null, 31.34284609, 0.03554654, 0.09627231)] // stops as v touches zero: when is not sharp
    public void Reduce_HalfSine_MatchesCase10(
        double peakG, double durationS, double v0, double deltaVMs, double crushM, double? crushAtS, double olcG, double t1, double t2)
    {
        var context = Context(t => t < durationS ? -peakG * Math.Sin(Math.PI * t / durationS) : 0, v0);

        var (deltaV, stroke, olc) = (new VehicleDeltaV().Reduce(context), new VehicleStroke().Reduce(context), new VehicleOlc().Reduce(context));

        Assert.Equal(deltaVMs * 3.6, deltaV.Value!.Value, 1e-6);
        Assert.Equal(crushM * 1000, stroke.Value!.Value, 1e-4);
        Assert.Equal(crushAtS ?? stroke.ToS!.Value, stroke.ToS!.Value, 1e-5);
        Assert.Equal(olcG, olc.Value!.Value, 1e-6 * olcG);
        Assert.Equal(t1, olc.FromS!.Value, 1e-7);
        Assert.Equal(t2, olc.ToS!.Value, 1e-7);
    }

    [Fact]
    public void Reduce_HalfSine_DeltaVIsTwoATOverPi()
    {
        var measure = new VehicleDeltaV().Reduce(Context(t => t < 0.11 ? -28 * Math.Sin(Math.PI * t / 0.11) : 0, V0));

        Assert.Equal(2 * 28 * G0 * 0.11 / Math.PI * 3.6, measure.Value!.Value, 1e-6);
        Assert.Equal(0, measure.FromS!.Value, 1e-12);
        Assert.Equal(["10VEHC000000ACXC"], measure.Sources);
        Assert.Equal("1", measure.MethodEdition);
    }

    [Fact]
    public void Reduce_SlowPulse_PeakIsThatOfTheShape()
    {
        // A half period of 200 ms is 2.5 Hz: class 60 passes it with 1 − 2e-9 (two-pass Butterworth, closed form).
        var peak = new VehiclePeak().Reduce(Context(t => -25 * Math.Sin(Math.PI * t / 0.2), V0, letter: 'P'));

        Assert.Equal(25, peak.Value!.Value, 1e-4);
        Assert.Equal(0.1, peak.FromS!.Value, 2e-4);
        Assert.Equal((peak.FromS, 60), (peak.ToS, peak.FilterClass!.Value));
    }

    [Fact]
    public void Reduce_NoDeceleration_PeakIsZero() => Assert.Equal(0, new VehiclePeak().Reduce(Context(t => 1 + t, V0, letter: 'P')).Value);

    [Fact]
    public void Reduce_NeverHeld_OlcIsAbsent()
    {
        var olc = new VehicleOlc().Reduce(Context(t => -0.05 - t, V0));

        Assert.Null(olc.Value);
        Assert.Contains("does not use up", olc.Absent, StringComparison.Ordinal);
    }

    [Fact]
    public void Reduce_NoSpeed_IsAbsentForWhatNeedsOne()
    {
        var context = new PulseContext(Conduct(), Procedure(), Source(Vehicle(_ => -10)));

        Assert.All(
            new IVehicleMeasure[] { new VehicleDeltaV(), new VehicleStroke(), new VehicleOlc(), new ConductSpeed(), new ConductEnergyRatio() },
            measure => Assert.Equal("no impact speed recorded", measure.Reduce(context).Absent));
    }

    [Theory]
    [InlineData(57, 56, 1.03603316)]
    [InlineData(65, 64, 1.03149414)]
    [InlineData(64.37376, 56, 1.32142251)]
    public void Reduce_OverSpeed_HasThePublishedEnergyRatio(double speed, double nominal, double ratio)
    {
        var context = new PulseContext(
            Conduct((decimal)speed), Procedure() with { NominalSpeedKmh = (decimal)nominal }, Source(Vehicle(_ => -10)));

        Assert.Equal(ratio, new ConductEnergyRatio().Reduce(context).Value!.Value, 5e-9);
    }

    [Fact]
    public void Reduce_TwoReadings_SpeedIsTheirMean() =>
        Assert.Equal(64.33, new ConductSpeed().Reduce(new PulseContext(Conduct(64.31m, 64.35m), Procedure(), Source(Vehicle(_ => -10)))).Value);

    [Fact]
    public void Reduce_MetresPerSecondSquared_GivesTheSameMeasures()
    {
        var inG = Context(t => -20 * Math.Sin(Math.PI * t / 0.2), V0);
        var inMs2 = new PulseContext(
            Conduct((decimal)(V0 * 3.6)), Procedure(), Source(Vehicle(t => -20 * G0 * Math.Sin(Math.PI * t / 0.2)) with { Unit = "m/(s*s)" }));

        Assert.All(PulseMeasures.All, measure => Assert.Equal(measure.Reduce(inG).Value!.Value, measure.Reduce(inMs2).Value!.Value, 1e-9));
    }

    [Fact]
    public void Reduce_ClippedDeceleration_GivesBoundsInTheRightDirection()
    {
        var context = Context(t => Math.Max(-25, -40 * Math.Sin(Math.PI * t / 0.1)) * (t < 0.1 ? 1 : 0), V0);

        var deltaV = new VehicleDeltaV().Reduce(context);
        var stroke = new VehicleStroke().Reduce(context);
        Assert.Equal((deltaV.Value, null), (deltaV.Bounds!.AtLeast, deltaV.Bounds.AtMost));
        Assert.Equal((null, stroke.Value), (stroke.Bounds!.AtLeast, stroke.Bounds.AtMost));

        // The true pulse lies within the bounds.
        var whole = Context(t => t < 0.1 ? -40 * Math.Sin(Math.PI * t / 0.1) : 0, V0);
        Assert.True(new VehicleDeltaV().Reduce(whole).Value >= deltaV.Bounds.AtLeast);
        Assert.True(new VehicleStroke().Reduce(whole).Value <= stroke.Bounds.AtMost);
    }

    [Fact]
    public void Reduce_UnfitFromATime_IsAbsentWithALowerBoundAndKeepsAnEarlierOlc()
    {
        ChannelFlag flag = new("10VEHC000000ACXC", ChannelFlagKind.Unfit, 0.17, null, "cable torn");
        var context = new PulseContext(Conduct((decimal)(V0 * 3.6)), Procedure(), Source([flag], Vehicle(_ => -10), Other()));

        var deltaV = new VehicleDeltaV().Reduce(context);
        Assert.Equal("10VEHC000000ACXC: flagged unfit from 170 ms on: cable torn", deltaV.Absent);
        Assert.Equal(10 * G0 * (0.17 - FineS) * 3.6, deltaV.Bounds!.AtLeast!.Value, 1e-9);
        Assert.Equal(12.76595745, new VehicleOlc().Reduce(context).Value!.Value, 5e-9); // t2 = 168 ms
    }

    [Fact]
    public void Reduce_PeakBeforeTheUnfitTime_BoundsThePeakFromBelow()
    {
        ChannelFlag flag = new("10VEHC000000ACXP", ChannelFlagKind.Unfit, 0.17, null, "cable torn");

        var peak = new VehiclePeak().Reduce(new PulseContext(
            Conduct(60), Procedure(), Source([flag], Vehicle(t => t < 0.17 ? -20 * Math.Sin(Math.PI * t / 0.2) : -500, 'P', 1e-4))));

        Assert.Null(peak.Value);
        Assert.Equal(20, peak.Bounds!.AtLeast!.Value, 1e-4);
    }

    // A constant −10 g would be a flat channel: one sample before contact differs.
    private static RecordedChannel Vehicle(Func<double, double> g, char letter = 'C', double intervalS = FineS) =>
        Channel($"10VEHC000000ACX{letter}", "g", t => t < -0.5 * intervalS ? 0 : g(t), startS: -intervalS, intervalS: intervalS);

    private static RecordedChannel Other() => Channel("10BPILLE0000ACXC", "g", t => t, startS: 0, number: 2);

    private static PulseContext Context(Func<double, double> g, double v0, char letter = 'C', double intervalS = FineS) =>
        new(Conduct((decimal)(v0 * 3.6)), Procedure(), Source(Vehicle(g, letter, letter == 'P' ? 1e-4 : intervalS)));
}
