using Toepan.Domain.Measures;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;
using Xunit;

namespace Toepan.Domain.Tests.Ratings;

/// <summary>Region levels, limits and what is not rated: design §6 and "Settled readings" of methods edition 1.</summary>
public sealed class RaterRegionTests
{
    /// <summary>Bounds of excess risk are inclusive; p₀ of the lower leg is the ankle's at no force, 1/(1 + e^4.572).</summary>
    [Theory]
    [InlineData(0.05, ProtectionLevel.High)]
    [InlineData(0.0500001, ProtectionLevel.Moderate)]
    [InlineData(0.15, ProtectionLevel.Moderate)]
    [InlineData(0.1500001, ProtectionLevel.Low)]
    [InlineData(0.35, ProtectionLevel.Low)]
    [InlineData(0.3500001, ProtectionLevel.VeryLow)]
    public void Rate_ExcessRiskAtABound_IsStillTheBetterLevel(double excess, ProtectionLevel expected)
    {
        var zero = 1 / (1 + Math.Exp(4.572));
        var region = Region(RatingCase.Benign().Set("risk.lowerleg.left", Digits.Round12(zero + (excess * (1 - zero)))).Rate(), "lowerleg.left");

        Assert.Equal(expected, region.Level);
        Assert.Equal(excess, region.Excess!.Value, 1e-11);
    }

    /// <summary>Excess of the neck from the published zero-load risk 0.03816588 (standards.md §8.1): Nij 0.5 → 0.09599837 (standards.md §16-8).</summary>
    [Fact]
    public void Rate_NeckOfNijHalf_HasTheExcessOfThePublishedFigures()
    {
        var neck = Region(RatingCase.Benign().Set("neck.nij", 0.5).Rate(), "neck");

        Assert.Equal(0.09599837, neck.Risk!.Value, 5e-9);
        Assert.Equal((0.09599837 - 0.03816588) / (1 - 0.03816588), neck.Excess!.Value, 2e-8);
        Assert.Equal((ProtectionLevel.Moderate, "neck.nij"), (neck.Level!.Value, neck.Driver));
    }

    [Fact]
    public void Rate_RiskBelowZeroLoad_HasNoNegativeExcess() =>
        Assert.Equal(0, Region(RatingCase.Benign().Set("risk.lowerleg.left", 0.004).Rate(), "lowerleg.left").Excess);

    /// <summary>A risk whose loads are no measures is taken as reduced; one whose loads are is made of them by the scheme's own curves.</summary>
    [Fact]
    public void Rate_GivenRisk_CountsOnlyWhereItsLoadsAreNoMeasures()
    {
        Assert.Equal(0.2, Region(RatingCase.Benign().Set("risk.lowerleg.left", 0.2).Rate(), "lowerleg.left").Risk);
        Assert.Equal(Region(RatingCase.Benign().Rate(), "head").Risk, Region(RatingCase.Benign().Set("risk.head", 0.2).Rate(), "head").Risk);
    }

    /// <summary>At the limit it holds nothing, above it the region is low at best; figures of methods edition 1 for H3 / HF.</summary>
    [Theory]
    [InlineData("H3", "head", "head.hic15", 700)]
    [InlineData("HF", "head", "head.hic15", 700)]
    [InlineData("H3", "head", "head.a3ms", 80)]
    [InlineData("HF", "head", "head.a3ms", 80)]
    [InlineData("H3", "neck", "neck.nij", 1.0)]
    [InlineData("HF", "neck", "neck.nij", 1.0)]
    [InlineData("H3", "neck", "neck.tension", 4.17)]
    [InlineData("HF", "neck", "neck.tension", 2.62)]
    [InlineData("H3", "neck", "neck.compression", 4.0)]
    [InlineData("HF", "neck", "neck.compression", 2.52)]
    [InlineData("H3", "chest", "chest.deflection", 63)]
    [InlineData("HF", "chest", "chest.deflection", 52)]
    [InlineData("H3", "chest", "chest.a3ms", 60)]
    [InlineData("HF", "chest", "chest.a3ms", 60)]
    [InlineData("H3", "chest", "chest.viscous", 1.0)]
    [InlineData("HF", "chest", "chest.viscous", 1.0)]
    [InlineData("H3", "thigh.left", "femur.left.compression", 10.008)]
    [InlineData("HF", "thigh.right", "femur.right.compression", 6.805)]
    [InlineData("H3", "thigh.left", "knee.left.slide", 15)]
    [InlineData("HF", "thigh.right", "knee.right.slide", 15)]
    [InlineData("H3", "lowerleg.left", "tibia.left.upper.index", 1.3)]
    [InlineData("H3", "lowerleg.right", "tibia.right.lower.index", 1.3)]
    [InlineData("HF", "lowerleg.right", "tibia.right.lower.index", 1.3)]
    [InlineData("H3", "lowerleg.left", "tibia.left.compression", 8)]
    public void Rate_OverALimit_HoldsTheRegionToLowAtBest(string dummy, string region, string measure, double limit)
    {
        var at = RatingCase.Benign(Enum.Parse<DummyType>(dummy)).Set(measure, limit).Rate();
        var over = RatingCase.Benign(Enum.Parse<DummyType>(dummy)).Set(measure, limit * 1.000001).Rate();

        Assert.False(Rule(at, $"limit.{measure}").Fired);
        Assert.True(Rule(over, $"limit.{measure}").Fired);
        Assert.True(Region(over, region).Level >= ProtectionLevel.Low);
        Assert.Equal(Region(at, region).Unlimited, Region(at, region).Level);
        Assert.Equal(Region(over, region).Unlimited < ProtectionLevel.Low, Rule(over, $"limit.{measure}").Changed);
    }

    [Fact]
    public void Rate_LimitThatDecides_IsTheDriverWithItsMargin()
    {
        var head = Region(RatingCase.Benign().Set("head.a3ms", 86).Rate(), "head");

        Assert.Equal((ProtectionLevel.Low, ProtectionLevel.High), (head.Level!.Value, head.Unlimited!.Value));
        Assert.Equal(("head.a3ms", 86, 6), (head.Driver, head.Value, head.Margin!.ToBetter));
        Assert.Null(head.Margin.ToWorse);
        Assert.Equal(["limit.head.a3ms"], head.Rules);
    }

    /// <summary>Through the curve's inverse: HIC15 where Φ((ln x − 7.45231)/0.73998) is 5 and 15 %, z = −1.6448536 and −1.0364334 (normal tables).</summary>
    [Fact]
    public void Rate_ModerateHead_HasMarginsInHic()
    {
        var head = Region(RatingCase.Benign().Set("head.hic15", 600).Rate(), "head");

        Assert.Equal(ProtectionLevel.Moderate, head.Level);
        Assert.Equal(600 - Math.Exp(7.45231 - (0.73998 * 1.6448536269514722)), head.Margin!.ToBetter!.Value, 1e-6);
        Assert.Equal(700 - 600, head.Margin.ToWorse!.Value, 1e-9);
        Assert.True(Math.Exp(7.45231 - (0.73998 * 1.0364333894937898)) > 700);
    }

    [Theory]
    [InlineData("tibia.left.upper.index", 0.67, 0.90, 1.14)]
    [InlineData("tibia.left.lower.index", 0.67, 0.90, 1.14)]
    [InlineData("tibia.left.compression", 1.5, 2.7, 3.8)]
    public void Rate_LowerLegOfSmallWoman_IsRatedOnItsMeasures(string measure, double high, double moderate, double low)
    {
        double[] values = [high, high + 1e-6, moderate, moderate + 1e-6, low, low + 1e-6];

        Assert.Equal([0, 1, 1, 2, 2, 3], values.Select(v => (int)Region(RatingCase.Benign(DummyType.HF).Set(measure, v).Rate(), "lowerleg.left").Level!.Value));
    }

    [Theory]
    [InlineData("H3", "head", "head.hic15")]
    [InlineData("H3", "neck", "neck.nij")]
    [InlineData("H3", "neck", "neck.tension")]
    [InlineData("H3", "neck", "neck.compression")]
    [InlineData("H3", "chest", "chest.deflection")]
    [InlineData("H3", "thigh.left", "femur.left.compression")]
    [InlineData("H3", "lowerleg.right", "tibia.right.compression")]
    [InlineData("H3", "lowerleg.right", "risk.lowerleg.right")]
    [InlineData("HF", "lowerleg.right", "tibia.right.compression")]
    public void Rate_InputAbsent_LeavesRegionAndOverallUnratedWithTheReason(string dummy, string region, string measure)
    {
        var rating = RatingCase.Benign(Enum.Parse<DummyType>(dummy)).Absent(measure).Rate();

        Assert.Null(Region(rating, region).Level);
        Assert.Contains("channel unfit", Region(rating, region).NotRated, StringComparison.Ordinal);
        Assert.Null(rating.Overall);
        Assert.Contains("is not rated", rating.NotRated, StringComparison.Ordinal);
        Assert.All(rating.Regions.Where(r => r.Region != region), r => Assert.NotNull(r.Level));
        Assert.Null(region is "head" or "neck" or "chest" ? rating.LifeExcess : rating.LegsExcess);
    }

    [Theory]
    [InlineData("tibia.left.upper.index")]
    [InlineData("knee.left.slide")]
    [InlineData("chest.viscous")]
    [InlineData("head.a3ms")]
    public void Rate_MeasureThatIsNoInputAbsent_StillRates(string measure)
    {
        var rating = RatingCase.Benign().Absent(measure).Rate();

        Assert.Equal(ProtectionLevel.High, rating.Overall);
        Assert.Empty(rating.PossibleOverall);
        Assert.Contains("could not be held against its limit", Rule(rating, $"limit.{measure}").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Rate_BothTibiaIndicesAbsent_LeavesTheLowerLegUnrated() =>
        Assert.Null(Region(RatingCase.Benign().Absent("tibia.left.upper.index").Absent("tibia.left.lower.index").Rate(), "lowerleg.left").Level);

    [Fact]
    public void Rate_LimitExceededByABoundAlone_Fires()
    {
        var rating = RatingCase.Benign().Absent("chest.a3ms", bounds: new(70, null, "clipped")).Rate();

        Assert.True(Rule(rating, "limit.chest.a3ms").Changed);
        Assert.Equal(ProtectionLevel.Low, Region(rating, "chest").Level);
    }

    /// <summary>The neck's tension and compression share a curve; the margin is through it, and the other loads are said.</summary>
    [Fact]
    public void Rate_NeckDrivenByTension_SaysWhatElseWouldHaveToFall()
    {
        var rating = RatingCase.Benign().Set("neck.tension", 3.9).Set("neck.compression", 3.8).Rate();
        var curve = RiskFunctions.Get("neck.force", DummyType.H3);
        const double Zero = 0.03816588;

        Assert.Equal("neck.tension", Region(rating, "neck").Driver);
        Assert.Equal(ProtectionLevel.Moderate, Region(rating, "neck").Level);
        Assert.Equal(3.9 - curve.Inverse(Zero + (0.05 * (1 - Zero))), Region(rating, "neck").Margin!.ToBetter!.Value, 1e-6);
        Assert.Contains(rating.Explanation, s => s.Contains("together with neck compression", StringComparison.Ordinal));
    }

    [Fact]
    public void Rate_HeadLowByRiskAndOverALimitToo_SaysThatBothWouldHaveToFall()
    {
        var rating = RatingCase.Benign().Set("head.hic15", 834).Set("head.a3ms", 116.1).Rate();

        Assert.Equal(("head.hic15", 134), (Region(rating, "head").Driver, Math.Round(Region(rating, "head").Margin!.ToBetter!.Value, 9)));
        Assert.Contains(rating.Explanation, s => s.Contains("HIC15 134 lower would give moderate protection together with head acceleration for 3 ms 36.1 g lower", StringComparison.Ordinal));
    }

    [Fact]
    public void Rate_LowerLegRisk_NamesTheLoadBehindIt()
    {
        var rating = RatingCase.Benign().Set("risk.lowerleg.left", 0.13101660, detail: "ankle").Rate();

        // standards.md §16-8: foot/ankle 4 kN → 0.13101660. High ends at e = 5 %: p = 5.97 %, F = (4.572 + ln(p/(1 − p)))/0.670 = 2.71 kN.
        Assert.Contains(rating.Explanation, s => s.StartsWith("Left lower leg: moderate protection, decided by left lower-leg risk of 13.1 %, from force at the ankle of 4.00 kN. Left lower-leg risk 7.1 percentage points lower (force at the ankle 1.29 kN lower) would give high protection", StringComparison.Ordinal));
    }

    private static RegionRating Region(Rating rating, string region) => rating.Regions.First(r => r.Region == region);

    private static RuleOutcome Rule(Rating rating, string rule) => rating.Rules.First(r => r.Rule == rule);
}
