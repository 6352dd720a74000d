using Toepan.Domain.Measures.Pulse;
using Toepan.Domain.Packages;
using Xunit;
using static Toepan.Domain.Tests.Channels.TestPackages;

namespace Toepan.Domain.Tests.Measures.Pulse;

/// <summary>Which channels make the pulse: methods edition 1, "Vehicle pulse" and settled reading "Which channel".</summary>
public sealed class VehiclePulseTests
{
    [Fact]
    public void Find_CentreThere_IsUsedAlone() =>
        Assert.Equal(["10VEHC000000ACXC"], Codes(VehiclePulse.Find(Source(Ramp("10VEHC000000ACXC", 1), Ramp("10BPILLE0000ACXC", 2), Ramp("10BPILRI0000ACXC", 3)), 180)));

    [Fact]
    public void Find_NoCentre_IsTheMeanOfThePillars()
    {
        var pulse = VehiclePulse.Find(Source(Ramp("10BPILLE0000ACXC", 2), Ramp("10BPILRI0000ACXC", 4)), 180);

        Assert.Equal(-3 * 0.1, pulse.History!.Values.Span[1000], 1e-12);
        Assert.Equal(2, pulse.Channels.Count);
    }

    [Fact]
    public void Find_HalfAPillarPair_GoesToTheSills() => Assert.Equal(
        ["10SILLLE0000ACXC", "10SILLRI0000ACXC"],
        Codes(VehiclePulse.Find(Source(Ramp("10BPILLE0000ACXC", 2), Ramp("10SILLLE0000ACXC", 4), Ramp("10SILLRI0000ACXC", 4)), 180)));

    [Fact]
    public void Find_CentreUnfit_IsAbsentThoughThePillarsAreFit()
    {
        var pulse = VehiclePulse.Find(
            Source(Channel("10VEHC000000ACXC", "g", _ => 1), Ramp("10BPILLE0000ACXC", 2), Ramp("10BPILRI0000ACXC", 3)), 180);

        Assert.Null(pulse.History);
        Assert.StartsWith("10VEHC000000ACXC: flat", pulse.Absent, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_OnePillarUnfit_IsAbsent() => Assert.StartsWith(
        "10BPILRI0000ACXC: flat", VehiclePulse.Find(Source(Ramp("10BPILLE0000ACXC", 2), Channel("10BPILRI0000ACXC", "g", _ => 1)), 180).Absent, StringComparison.Ordinal);

    [Fact]
    public void Find_PillarsThatStartApart_AreAbsent() => Assert.Contains(
        "start at", VehiclePulse.Find(Source(Ramp("10BPILLE0000ACXC", 2), Ramp("10BPILRI0000ACXC", 2, -0.01)), 180).Absent, StringComparison.Ordinal);

    [Fact]
    public void Find_NothingThere_SaysWhatWasLookedFor() =>
        Assert.Contains("neither 10VEHC nor", VehiclePulse.Find(Source(Ramp("10BPILLE0000ACXC", 2)), 180).Absent, StringComparison.Ordinal);

    private static RecordedChannel Ramp(string code, double slope, double startS = 0) => Channel(code, "g", t => -slope * t, startS);

    private static IEnumerable<string> Codes(VehiclePulse pulse) => pulse.Channels.Select(channel => channel.Code);
}
