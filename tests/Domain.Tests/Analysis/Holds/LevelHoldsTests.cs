using Toepan.Domain.Analysis.Holds;
using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Ratings;
using Toepan.Domain.Tests.Ratings;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Holds;

/// <summary>Chances by draws against closed forms, to half a percentage point.</summary>
public sealed class LevelHoldsTests
{
    private const double HalfAPoint = 0.005;

    // scipy 1.10: norm.cdf of ln(bound/x)/√ln(1 + 0.2²); bounds exp(7.45231 + 0.73998·norm.ppf(0.05 and 0.15)), the limit 700 below the second.
    [Theory]
    [InlineData(300, 0.9963529354123372)]
    [InlineData(480, 0.6216658147342639)]
    [InlineData(600, 0.574829383128973)]
    [InlineData(690, 0.46503106901151875)]
    public void Of_OneRegionOfOneFigure_AgreesWithTheClosedForm(double hic, double chance)
    {
        var region = Region(RatingCase.Benign().Set("head.hic15", hic), "head");

        Assert.Equal(chance, region.Holds!.Independent, HalfAPoint);
        Assert.Equal(chance, region.Holds.Correlated, HalfAPoint);
    }

    // scipy 1.10: norm.cdf(10/15), its square, and the same for both at once where they move together.
    [Fact]
    public void Of_StructureOfTwoFigures_IsTheProductAloneAndTheLeastTogether()
    {
        const double One = 0.7475074624530771;
        var region = Region(RatingCase.Benign().Set("structure.footwell.rearward", 70).Set("structure.knee-panel-outer.rearward", 30).Set("structure.wheel-hub.rearward", -80)
            .Set("structure.wheel-hub.upward", -80).Set("structure.knee-panel-inner.rearward", -80).Set("structure.opening.closure", -80), "structure");

        Assert.Equal(One * One, region.Holds!.Independent, HalfAPoint);
        Assert.Equal(One, region.Holds.Correlated, HalfAPoint);
    }

    [Fact]
    public void Of_FarFromEveryBound_HoldsCertainly()
    {
        var report = Report(RatingCase.Benign());

        Assert.Equal(ProtectionLevel.High, report.Overall);
        Assert.InRange(report.Holds!.Correlated, 0.99, 1);
        Assert.Equal(1, report.Levels.Sum(level => level.Chance.Independent), 1e-12);
        Assert.Empty(report.Unknown);
    }

    [Fact]
    public void Of_SameRunTwice_GivesTheSameDigits()
    {
        var run = RatingCase.Benign().Set("head.hic15", 600).Set("chest.deflection", 40);

        Assert.Equal(Report(run).Levels, Report(run).Levels);
    }

    [Fact]
    public void Of_CappedRegion_HoldsWhateverIsMeasuredBelow()
    {
        var run = RatingCase.Benign().Set("head.hic15", 480).Found("head-strike", Toepan.Domain.Packages.FindingSeverity.Severe, "head");

        Assert.Equal(1, Region(run, "head").Holds!.Independent, 1e-3);
    }

    [Fact]
    public void Of_RegionNotRated_LeavesOverallOutAndSaysWhy()
    {
        var report = Report(RatingCase.Benign().Absent("chest.deflection"));

        Assert.Null(report.Overall);
        Assert.Null(report.Holds);
        Assert.Null(report.Repeat);
        Assert.Contains("chest", report.NotRated, StringComparison.Ordinal);
        Assert.Null(report.Regions.Single(region => region.Region == "chest").Holds);
        Assert.NotNull(report.Regions.Single(region => region.Region == "head").Holds);
    }

    [Fact]
    public void Of_VehicleCost_IsDividedByTheChanceOfAWorseRepeat()
    {
        var report = LevelHolds.Of(RatingCase.Scheme, Model(RatingCase.Benign().Set("structure.footwell.rearward", 230)), vehicleCost: 30_000);

        var worth = report.Repeat!;
        Assert.Equal(30_000 / worth.Worse.Independent, worth.CostPerChange!.Value, 1e-6);
        Assert.Equal(1, worth.Worse.Independent + worth.Better.Independent + report.Holds!.Independent, 1e-9);
    }

    private static RegionHold Region(RatingCase run, string region) => Report(run).Regions.Single(hold => hold.Region == region);

    private static HoldReport Report(RatingCase run) => LevelHolds.Of(RatingCase.Scheme, Model(run));

    private static LevelModel Model(RatingCase run) =>
        LevelModelBuilder.Build(RatingCase.Scheme, run.Inputs(), ScatterTable.Of(RatingCase.Scheme, []));
}
