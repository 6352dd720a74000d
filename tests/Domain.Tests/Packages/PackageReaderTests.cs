using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Packages;

/// <summary>A good package, read part by part. The expected values stand in <see cref="SamplePackage"/>.</summary>
public sealed class PackageReaderTests
{
    private static TestPackage Good()
    {
        var reading = new SamplePackage().Read();
        Assert.Empty(reading.Problems);
        return reading.Package!;
    }

    [Fact]
    public void Read_GoodPackage_GivesTheProgramme()
    {
        var programme = Good().Programme;
        Assert.Equal("FO-0042", programme.Test);
        Assert.Equal("offset-frontal-64", programme.Procedure);
        Assert.Equal(new DateOnly(2031, 3, 14), programme.Date);
        Assert.Equal("Hall 2", programme.Laboratory);
        Assert.Null(programme.RepeatOf);
        Assert.Equal(new PackageVehicle("tarnbrook-voyle-2031", "Tarnbrook", "Voyle", 2030, 2032, "delivery-van", 1690m), programme.Vehicle);
        Assert.Equal([64.31m, 64.35m], programme.Conduct.ImpactSpeedKmh);
        Assert.Equal(40.3m, programme.Conduct.OverlapPercent);
        Assert.Equal(1834.5m, programme.Conduct.TestMassKg);
        Assert.Equal(1840m, programme.Conduct.DeclaredTestMassKg);
        Assert.Equal([21.3m, 21.4m], programme.Conduct.DummyTemperatureC);
        Assert.Equal(0.2m, programme.Conduct.ImpactAngleDeg);
        Assert.Equal(6m, programme.Conduct.VerticalAlignmentMm);
        Assert.Equal([new Occupant(1, "driver", DummyType.H3)], programme.Occupants);
        Assert.Equal(StructureFrame.Default, programme.Structure);
        Assert.Empty(programme.Unknown);
    }

    [Fact]
    public void Read_GoodPackage_GivesTheChannels()
    {
        var channels = Good().Channels;
        Assert.Equal(["11HEAD0000H3ACXP", "11HEAD0000H3ACYP"], channels.Select(channel => channel.Code));
        var first = channels[0];
        Assert.Equal(("Channel/FO-0042.001", 1, "m/(s*s)"), (first.File, first.Number, first.Unit));
        Assert.Equal((-0.01, 0.0001, 4905.0, "1000", 4), (first.FirstSampleS, first.IntervalS, first.AmplitudeClass, first.HeaderFilterClass, first.StatedCount));
        Assert.Equal([0.5, -1.25, 300, 4], first.Samples.ToArray());
        Assert.Equal((11, null, null), (first.FirstSampleLine, first.FirstBadSample, first.UnfitReason));
        Assert.Equal(new HeaderEntry("Channel code", "11HEAD0000H3ACXP", 3), first.Header[2]);
    }

    [Fact]
    public void Read_GoodPackage_GivesHeadersAndSidecars()
    {
        var package = Good();
        Assert.Equal(["1.6", "Hall 2", "FO-0042", "first", "second"], package.TestHeader.Select(entry => entry.Value));
        Assert.Equal(4, package.IndexHeader.Count);
        Assert.Equal(
            [
                new("ref-1", PointRole.Reference, new(0, 0, 0), new(10, 0, 0), 2),
                new("wheel-hub", PointRole.Measured, new(2000.5, -700, 100), new(1950.25, -695, 98), 3),
            ],
            package.Points);
        Assert.Equal([new Clearance("knee", "wheel-hub", 120.5, 2)], package.Clearances);
        Assert.Equal(
            [
                new(61.5, "C3", "head-strike", "head", FindingSeverity.Concern, "brushed the rim, twice", null, 2),
                new(null, null, "door-jammed", "structure", FindingSeverity.Note, "by hand", null, 3),
            ],
            package.Findings);
        // sha256sum of the six bytes.
        Assert.Equal([new Attachment("Photo/a.jpg", 6, "6456b2ac4bae7c410724a1dbd8eeaaf2a9cb6b03c3e6c82ccd8101b284656791")], package.Attachments);
        Assert.Null(package.TopFolder);
    }

    [Fact]
    public void Read_TopFolder_IsTakenOffEveryName()
    {
        var reading = new SamplePackage().Read("FO-0042/");
        Assert.Empty(reading.Problems);
        Assert.Equal("FO-0042", reading.Package!.TopFolder);
        Assert.Equal("Channel/FO-0042.001", reading.Package.Channels[0].File);
        Assert.Equal(Good().ContentSha256, reading.Package.ContentSha256);
    }
}
