using Toepan.Domain.Channels;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Tests.Channels;

/// <summary>Small packages made in memory: what a test does not name is as it should be.</summary>
internal static class TestPackages
{
    public const double Dt = 1e-4;

    /// <summary>A channel from a formula in t, sampled −0.060 … 0.300 s at 10 kHz unless said otherwise.</summary>
    public static RecordedChannel Channel(
        string code, string unit, Func<double, double> value, double startS = -0.060, double endS = 0.300, double intervalS = Dt, int number = 1)
    {
        var count = (int)Math.Round((endS - startS) / intervalS) + 1;
        return Channel(code, unit, Enumerable.Range(0, count).Select(i => value(startS + (i * intervalS))).ToArray(), startS, intervalS, number);
    }

    public static RecordedChannel Channel(string code, string unit, double[] samples, double startS = 0, double intervalS = Dt, int number = 1) => new()
    {
        Code = code,
        File = $"Channel/FO-0001.{number:D3}",
        Number = number,
        Unit = unit,
        FirstSampleS = startS,
        IntervalS = intervalS,
        Samples = samples,
        StatedCount = samples.Length,
        FirstSampleLine = 20,
    };

    public static TestPackage Package(params RecordedChannel[] channels) => new()
    {
        Programme = new()
        {
            Test = "FO-0001",
            Procedure = "offset-frontal-64",
            Date = new(2031, 3, 14),
            Vehicle = new("tarnbrook-voyle-2031", "Tarnbrook", "Voyle", 2030, 2032, "delivery-van", 1690),
            Conduct = Conduct(64.4m),
            Occupants = [new(1, "driver", DummyType.H3)],
            Structure = StructureFrame.Default,
        },
        TestHeader = [],
        Channels = channels,
        Points = [],
        Clearances = [],
        Findings = [],
        Attachments = [],
        ContentSha256 = new string('0', 64),
    };

    public static ConductReadings Conduct(params decimal[] speedsKmh) => new()
    {
        ImpactSpeedKmh = speedsKmh,
        OverlapPercent = 40,
        DummyTemperatureC = [21.3m],
    };

    public static ProcedureEdition Procedure(params ProcedureChannel[] channels) => new()
    {
        Key = "offset-frontal-64",
        Edition = 1,
        Title = "Offset frontal",
        NominalSpeedKmh = 64.4m,
        Conduct = [],
        Channels = channels,
        Points = [],
        SmallerOccupantForwardShiftMm = 120,
        BothTibiaCells = true,
    };

    public static ChannelSource Source(params RecordedChannel[] channels) => new(Package(channels), Procedure(), []);

    public static ChannelSource Source(IReadOnlyList<ChannelFlag> flags, params RecordedChannel[] channels) => new(Package(channels), Procedure(), flags);
}
