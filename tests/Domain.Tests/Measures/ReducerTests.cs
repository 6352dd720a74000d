using System.Globalization;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Xunit;
using static Toepan.Domain.Tests.Channels.TestPackages;

namespace Toepan.Domain.Tests.Measures;

/// <summary>All parts together: same input, same digits; nothing missing is ever a number.</summary>
public sealed class ReducerTests
{
    [Fact]
    public void Reduce_NoChannelsAtAll_GivesEveryMeasureAbsentWithAReason()
    {
        var reduction = Reducer.Reduce(Package(), Standard, []);

        Assert.All(
            reduction.Measures.Where(measure => !measure.Code.StartsWith("conduct.", StringComparison.Ordinal)),
            measure => Assert.True(measure.Value is null && !string.IsNullOrWhiteSpace(measure.Absent), measure.Code));
        Assert.Equal(64.4, reduction.Find("conduct.speed")!.Value);
        Assert.Equal("offset-frontal-64-1", reduction.ProcedureEdition);
        Assert.True(reduction.Conduct.Valid);
    }

    [Fact]
    public void Reduce_SameInputTwice_GivesTheSameDigitsUnderAnyCulture()
    {
        var first = Describe(Reducer.Reduce(Crash(), Standard, []));
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(first, Describe(Reducer.Reduce(Crash(), Standard, [])));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Reduce_Crash_RoundsEveryValueToTwelveDigits() => Assert.All(
        Reducer.Reduce(Crash(), Standard, []).Measures.Where(measure => measure.Value is not null),
        measure => Assert.Equal(Digits.Round12(measure.Value), measure.Value));

    [Fact]
    public void Reduce_Crash_CarriesProvenance()
    {
        var deltaV = Reducer.Reduce(Crash(), Standard, []).Find("vehicle.deltav")!;

        Assert.Equal(["10VEHC000000ACXP"], deltaV.Sources);
        Assert.Equal("10VEHC000000ACXP", Assert.Single(deltaV.Bias).Channel);
        Assert.Equal((180, "km/h", "1"), (deltaV.FilterClass!.Value, deltaV.Unit, deltaV.MethodEdition));
        Assert.Equal(0, deltaV.FromS);
    }

    [Fact]
    public void Reduce_OccupantsInOtherSeats_GiveTheSameCodesForEach()
    {
        var crash = Crash();
        var two = crash with
        {
            Programme = crash.Programme with { Occupants = [new(1, "driver", DummyType.H3), new(3, "passenger", DummyType.HF)] },
        };

        var measures = Reducer.Reduce(two, Standard, []).Measures;

        Assert.Equal(measures.Where(m => m.Position == 1).Select(m => m.Code), measures.Where(m => m.Position == 3).Select(m => m.Code));
        Assert.Equal(measures.Count, measures.Select(m => (m.Code, m.Position)).Distinct().Count());
    }

    [Fact]
    public void Reduce_FlagOnNoChannel_IsAProblem() => Assert.Contains(
        Reducer.Reduce(Crash(), Standard, [new("11HEAD0000H3ACXQ", ChannelFlagKind.Unfit, null, null, "typing error")]).Problems,
        problem => problem.Code == "flag.no-channel");

    [Fact]
    public void Reduce_ReversedVehicleChannel_IsReportedByQualityAndCrossCheck()
    {
        var crash = Crash();
        var reversed = crash with { Channels = crash.Channels.Select(c => c.Code.StartsWith("10VEHC", StringComparison.Ordinal) ? Reverse(c) : c).ToList() };

        var codes = Reducer.Reduce(reversed, Standard, []).Problems.Select(problem => problem.Code).ToList();

        Assert.Contains("channel.polarity", codes);
        Assert.Contains("check.vehicle.velocity-ratio", codes);
    }

    [Fact]
    public void Reduce_EveryNumberHuge_StaysFinite()
    {
        var huge = Package(
            Channel("10VEHC000000ACXP", "g", t => 9e8 * Math.Sin(900 * t)), Channel("11HEAD0000H3ACXP", "g", t => 9e8 * Math.Sin(700 * t), number: 2),
            Channel("11HEAD0000H3ACYP", "g", t => 9e8 * Math.Sin(800 * t), number: 3), Channel("11HEAD0000H3ACZP", "g", t => 9e8 * Math.Cos(800 * t), number: 4));

        Assert.All(Reducer.Reduce(huge, Standard, []).Measures, measure => Assert.True(measure.Value is null || double.IsFinite(measure.Value.Value), measure.Code));
    }

    private static ProcedureEdition Standard { get; } = ProcedureLibrary.Find("offset-frontal-64")!;

    private static TestPackage Crash() => Package(
        Channel("10VEHC000000ACXP", "m/(s*s)", t => (t is > 0 and < 0.11 ? -275 * Math.Sin(Math.PI * t / 0.11) : 0) + Noise(t)),
        Channel("11HEAD0000H3ACXP", "g", t => (t is > 0.02 and < 0.12 ? -50 * Math.Sin(Math.PI * (t - 0.02) / 0.1) : 0) + Noise(t), number: 2),
        Channel("11HEAD0000H3ACYP", "g", t => Noise(t + 1), number: 3),
        Channel("11HEAD0000H3ACZP", "g", t => Noise(t + 2), number: 4),
        Channel("11CHST0003H3DSXP", "mm", t => (t is > 0.02 and < 0.12 ? -35 * Math.Sin(Math.PI * (t - 0.02) / 0.1) : 0) + Noise(t), number: 5));

    private static double Noise(double t) => 0.02 * Math.Sin(8123.4 * t) * Math.Cos(517 * t);

    private static RecordedChannel Reverse(RecordedChannel channel) => channel with { Samples = Array.ConvertAll(channel.Samples.ToArray(), value => -value) };

    private static string Describe(Reduction reduction) => System.Text.Json.JsonSerializer.Serialize(reduction);
}
