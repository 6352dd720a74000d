using System.Diagnostics;
using Toepan.Demo.Packages;
using Toepan.Demo.Scenario;
using Toepan.Domain.Analysis.Keystones;
using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Keystones;

/// <summary>Each channel or reference point left out, against the whole reduction of the smaller package, on runs of the demo programme.</summary>
public sealed class KeystoneAnalysisTests
{
    private static readonly ProcedureEdition Procedure = ProcedureLibrary.Find("offset-frontal-64")!;

    [Theory]
    [InlineData("FO-0001")]
    [InlineData("FO-0008")]
    public void Of_EveryThirdTransducer_AgreesWithReducingTheSmallerPackage(string test)
    {
        var package = Package(test);
        var report = KeystoneAnalysis.Of(package, Procedure, [], SchemeLibrary.Default);
        var whole = Rate(package);
        Assert.Equal(whole.Overall, report.Overall);
        var transducers = report.Items.Where(item => item.Kind == KeystoneKind.Channel).OrderBy(item => item.Name, StringComparer.Ordinal).ToList();
        Assert.Equal(package.Channels.Select(channel => channel.Code[..15]).Distinct().Count(), transducers.Count);
        foreach (var item in transducers.Where((_, index) => index % 3 == 0))
        {
            Agree(whole, item, Rate(package with { Channels = [.. package.Channels.Where(channel => channel.Code[..15] != item.Name[..15])] }));
        }
    }

    [Fact]
    public void Of_EveryReferencePoint_AgreesWithReducingTheSmallerPackage()
    {
        var package = Package("FO-0001");
        var references = KeystoneAnalysis.Of(package, Procedure, [], SchemeLibrary.Default).Items.Where(item => item.Kind == KeystoneKind.Reference).ToList();

        Assert.Equal(package.Points.Count(point => point.Role == PointRole.Reference), references.Count);
        foreach (var item in references)
        {
            Agree(Rate(package), item, Rate(package with { Points = [.. package.Points.Where(point => point.Name != item.Name)] }));
        }
    }

    [Fact]
    public void Of_ChestDeflectionChannel_IsKeystoneAndAPelvisAccelerometerIsNot()
    {
        var items = KeystoneAnalysis.Of(Package("FO-0001"), Procedure, [], SchemeLibrary.Default).Items;

        Assert.Contains(items.Single(item => item.Name.StartsWith("11CHST0003", StringComparison.Ordinal)).Regions, region => region is { Region: "chest", Without: null });
        Assert.Equal(KeystoneEffect.None, items.First(item => item.Name.StartsWith("11PELV", StringComparison.Ordinal)).Effect);
        Assert.Equal(items.OrderByDescending(item => item.Effect).Select(item => item.Effect), items.Select(item => item.Effect));
    }

    [Fact]
    public void Of_ThreeReferencePoints_EachCarriesTheStructure()
    {
        var package = Package("FO-0001");
        var kept = package.Points.Where(point => point.Role == PointRole.Reference).Take(3).ToList();
        var small = package with { Points = [.. package.Points.Where(point => point.Role != PointRole.Reference).Concat(kept)] };

        var references = KeystoneAnalysis.Of(small, Procedure, [], SchemeLibrary.Default).Items.Where(item => item.Kind == KeystoneKind.Reference);

        Assert.All(references, item => Assert.Contains(item.Regions, region => region is { Region: "structure", Without: null }));
    }

    [Fact]
    public void Of_RunOf120Channels_TakesAtMostThreeSeconds()
    {
        // The other seats' dummies are copies of the driver's, until the package holds 120 channels; all of them are in seats of the run.
        var package = Package("FO-0001");
        var copies = Enumerable.Range(2, 8).SelectMany(seat => package.Channels
            .Where(channel => channel.Code.StartsWith("11", StringComparison.Ordinal))
            .Select(channel => channel with { Code = $"1{seat}{channel.Code[2..]}" }));
        var channels = package.Channels.Where(channel => !channel.Code.StartsWith("13", StringComparison.Ordinal)).Concat(copies).Take(120).ToList();
        var seats = channels.Select(channel => channel.Code[1] - '0').Where(seat => seat > 0).Distinct();
        var large = package with
        {
            Channels = channels,
            Programme = package.Programme with { Occupants = [.. seats.Select(seat => new Occupant(seat, seat == 1 ? "driver" : "passenger", DummyType.H3))] },
        };
        KeystoneAnalysis.Of(large, Procedure, [], SchemeLibrary.Default);

        var watch = Stopwatch.StartNew();
        var report = KeystoneAnalysis.Of(large, Procedure, [], SchemeLibrary.Default);

        Assert.Equal(120, report.Items.Count(item => item.Kind == KeystoneKind.Channel));
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 3);
    }

    private static void Agree(Rating whole, Keystone item, Rating smaller)
    {
        Assert.Equal(smaller.Overall, item.Overall);
        Assert.Equal(smaller.PossibleOverall, item.Possible);
        var regions = whole.Regions.Append(whole.Structure).Zip(smaller.Regions.Append(smaller.Structure))
            .Where(pair => pair.First.Level != pair.Second.Level)
            .Select(pair => new KeystoneRegion(pair.First.Region, pair.First.Position, pair.First.Level, pair.Second.Level));
        Assert.Equal(regions, item.Regions);
    }

    private static TestPackage Package(string test) => PackageBuilder.Build(NorthmoorProgramme.Runs.Single(run => run.Test == test), 1);

    private static Rating Rate(TestPackage package)
    {
        var reduction = Reducer.Reduce(package, Procedure, []);
        return Rater.Rate(SchemeLibrary.Default, new(reduction.Conduct.Valid, package.Programme.Occupants, reduction.Measures, package.Findings));
    }
}
