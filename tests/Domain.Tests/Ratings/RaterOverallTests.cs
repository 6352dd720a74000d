using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;
using Xunit;

namespace Toepan.Domain.Tests.Ratings;

/// <summary>The overall level, structure, caps and several occupants: design §6 and "Settled readings" of methods edition 1.</summary>
public sealed class RaterOverallTests
{
    [Fact]
    public void Rate_BenignRun_IsHighAndSaysSoFirst()
    {
        var rating = RatingCase.Benign().Rate();

        Assert.Equal(ProtectionLevel.High, rating.Overall);
        Assert.StartsWith("Overall: high protection, step 4 of 4", rating.Explanation[0], StringComparison.Ordinal);
        Assert.Equal("offset-frontal-1", rating.Scheme);
        Assert.Equal(7, rating.Regions.Count);
        Assert.Empty(rating.PossibleOverall);
    }

    /// <summary>One region very low, the rest benign: joint risk alone would not tell, the tie to the worst region makes it low.</summary>
    [Fact]
    public void Rate_OneRegionVeryLowByACap_IsAtMostOneStepBetter()
    {
        var rating = RatingCase.Benign().Found("occupant-trapped", FindingSeverity.Concern, "lower-leg-left").Rate();

        Assert.Equal(ProtectionLevel.VeryLow, Region(rating, "lowerleg.left").Level);
        Assert.Equal(ProtectionLevel.Low, rating.Overall);
        Assert.True(Rule(rating, "overall.one-step").Changed);
        Assert.Contains("ties it there", rating.Explanation[0], StringComparison.Ordinal);
    }

    /// <summary>Three regions at the end of high: 1 − 0.952³ = 13.7 % is moderate by itself, but never worse than the worst region.</summary>
    [Fact]
    public void Rate_ThreeRegionsAtTheEndOfHigh_IsNotWorseThanTheWorst()
    {
        var neck = 0.03816587999 + (0.048 * (1 - 0.03816587999));
        var rating = RatingCase.Benign().Set("head.hic15", Load("head.hic15", 0.048)).Set("neck.nij", Load("neck.nij", neck)).Set("chest.deflection", Load("chest.deflection", 0.048)).Rate();

        Assert.Equal(ProtectionLevel.Moderate, RatingCase.Scheme.Overall.Life[0].Joint!.Bounds.Of(rating.LifeExcess!.Value));
        Assert.Equal(ProtectionLevel.High, rating.Overall);
        Assert.True(Rule(rating, "overall.worst-region").Fired);
    }

    private static double Load(string function, double risk) => RiskFunctions.Get(function, DummyType.H3).Inverse(risk);

    [Theory]
    [InlineData("structure.footwell.rearward", 80, 160, 240)]
    [InlineData("structure.wheel-hub.rearward", 33, 67, 100)]
    [InlineData("structure.wheel-hub.upward", 27, 53, 80)]
    [InlineData("structure.knee-panel-outer.rearward", 40, 80, 120)]
    [InlineData("structure.knee-panel-inner.rearward", 40, 80, 120)]
    [InlineData("structure.opening.closure", 25, 60, 110)]
    public void Rate_Structure_TurnsAboveItsBoundsAndHoldsTheOverall(string measure, double high, double moderate, double low)
    {
        (double Value, ProtectionLevel Structure, ProtectionLevel Overall)[] cases =
        [
            (high, ProtectionLevel.High, ProtectionLevel.High), (high + 1e-6, ProtectionLevel.Moderate, ProtectionLevel.High),
            (moderate, ProtectionLevel.Moderate, ProtectionLevel.High), (moderate + 1e-6, ProtectionLevel.Low, ProtectionLevel.Moderate),
            (low, ProtectionLevel.Low, ProtectionLevel.Moderate), (low + 1e-6, ProtectionLevel.VeryLow, ProtectionLevel.Low),
        ];
        Assert.All(cases, c =>
        {
            var rating = RatingCase.Benign().Set(measure, c.Value).Rate();
            Assert.Equal((c.Structure, c.Overall), (rating.Structure.Level!.Value, rating.Overall!.Value));
            Assert.Equal(measure, rating.Structure.Driver);
            Assert.Null(rating.Structure.Position);
        });
    }

    [Theory]
    [InlineData("structure.footwell.rearward", false)]
    [InlineData("structure.wheel-hub.rearward", false)]
    [InlineData("structure.wheel-hub.upward", false)]
    [InlineData("structure.knee-panel-outer.rearward", true)]
    [InlineData("structure.opening.closure", true)]
    public void Rate_StructureMeasureAbsent_IsNotRatedOnlyWithoutFootwellOrHub(string measure, bool rated)
    {
        var rating = RatingCase.Benign().Absent(measure).Rate();

        Assert.Equal(rated, rating.Structure.Level is not null);
        Assert.Equal(rated, rating.Overall is not null);
    }

    [Theory]
    [InlineData("door-opened", FindingSeverity.Concern, ProtectionLevel.Low)]
    [InlineData("seat-anchorage-failed", FindingSeverity.Concern, ProtectionLevel.Low)]
    [InlineData("belt-failure", FindingSeverity.Concern, ProtectionLevel.Low)]
    [InlineData("fuel-leak", FindingSeverity.Severe, ProtectionLevel.Low)]
    [InlineData("isolation-lost", FindingSeverity.Severe, ProtectionLevel.Low)]
    [InlineData("electrolyte-leak", FindingSeverity.Severe, ProtectionLevel.Low)]
    [InlineData("fire", FindingSeverity.Severe, ProtectionLevel.VeryLow)]
    [InlineData("thermal-event", FindingSeverity.Severe, ProtectionLevel.VeryLow)]
    public void Rate_OverallCap_FiresFromItsSeverityWhoeversFindingItIs(string kind, FindingSeverity from, ProtectionLevel atBest)
    {
        var fired = RatingCase.Benign().Occupant(3, "passenger", DummyType.HF).Found(kind, from, "vehicle", 3).Rate();
        var below = RatingCase.Benign().Found(kind, from - 1).Rate();

        Assert.Equal(atBest, fired.Overall);
        Assert.True(Rule(fired, $"cap.{kind}").Changed);
        Assert.Equal(ProtectionLevel.High, below.Overall);
        Assert.False(Rule(below, $"cap.{kind}").Fired);
        Assert.Contains("a finding holds it there", fired.Explanation[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("head-strike", FindingSeverity.Severe, "vehicle", "head", ProtectionLevel.Low)]
    [InlineData("wheel-contact", FindingSeverity.Severe, "chest", "neck", ProtectionLevel.Low)]
    [InlineData("airbag-missed", FindingSeverity.Concern, "restraint", "head", ProtectionLevel.Low)]
    [InlineData("occupant-trapped", FindingSeverity.Concern, "lower-leg-right", "lowerleg.right", ProtectionLevel.VeryLow)]
    [InlineData("dummy-damaged", FindingSeverity.Severe, "lower-leg-left", "lowerleg.left", ProtectionLevel.VeryLow)]
    public void Rate_RegionCap_HoldsThatRegionOfThatOccupant(string kind, FindingSeverity from, string where, string region, ProtectionLevel atBest)
    {
        var fired = RatingCase.Benign().Occupant(3, "passenger", DummyType.H3).Found(kind, from, where).Rate();
        var below = RatingCase.Benign().Found(kind, from - 1, where).Rate();
        var beside = RatingCase.Benign().Occupant(3, "passenger", DummyType.H3).Found(kind, FindingSeverity.Severe, where, 3).Rate();

        Assert.Equal([atBest, ProtectionLevel.High], fired.Regions.Where(r => r.Region == region).Select(r => r.Level!.Value));
        Assert.Equal(ProtectionLevel.High, Region(below, region).Level);
        Assert.Equal([ProtectionLevel.High, atBest], beside.Regions.Where(r => r.Region == region).Select(r => r.Level!.Value));
        Assert.Equal(ProtectionLevel.High, beside.Overall);
        Assert.Null(Region(fired, region).Margin!.ToBetter);
        Assert.Equal([$"cap.{kind}"], Region(fired, region).Rules);
    }

    [Theory]
    [InlineData("occupant-trapped", "chest")]
    [InlineData("occupant-trapped", "vehicle")]
    [InlineData("dummy-damaged", "thigh-left")]
    [InlineData("floor-buckled", "vehicle")]
    [InlineData("invented-kind", "head")]
    public void Rate_FindingThatCapsNothing_ChangesNothing(string kind, string region)
    {
        var rating = RatingCase.Benign().Found(kind, FindingSeverity.Severe, region).Rate();

        Assert.Equal(ProtectionLevel.High, rating.Overall);
        Assert.DoesNotContain(rating.Rules, r => r.Rule.StartsWith("cap.", StringComparison.Ordinal) && r.Fired);
    }

    [Fact]
    public void Rate_CapOnARegionNotRated_LeavesItSo()
    {
        var rating = RatingCase.Benign().Absent("head.hic15").Found("head-strike", FindingSeverity.Severe).Rate();

        Assert.Null(Region(rating, "head").Level);
        Assert.True(Rule(rating, "cap.head-strike").Fired);
        Assert.False(Rule(rating, "cap.head-strike").Changed);
    }

    /// <summary>The region is worse by its cap; the joint risks stay as they are, only the tie to the worst region follows.</summary>
    [Fact]
    public void Rate_CappedHead_EntersByItsLevelNotByItsRisk()
    {
        var (capped, free) = (RatingCase.Benign().Found("head-strike", FindingSeverity.Severe).Rate(), RatingCase.Benign().Rate());

        Assert.Equal(free.LifeExcess, capped.LifeExcess);
        Assert.Equal(ProtectionLevel.Moderate, capped.Overall);
    }

    /// <summary>For the small woman the legs count by their worst final level, so a trapped lower leg is the legs' level itself.</summary>
    [Fact]
    public void Rate_SmallWomansTrappedLeg_MakesTheLegsVeryLow()
    {
        var rating = RatingCase.Benign(DummyType.HF).Found("occupant-trapped", FindingSeverity.Concern, "lower-leg-left").Rate();

        Assert.Equal(ProtectionLevel.VeryLow, rating.Overall);
        Assert.Null(rating.LegsExcess);
    }

    [Fact]
    public void Rate_SeveralOccupants_TakesTheDriverElseTheLowestPosition()
    {
        var driver = new RatingCase().Structure().Occupant(1, "passenger", DummyType.H3).Occupant(3, " Driver ", DummyType.H3).Set("head.hic15", 1500, 1).Rate();
        var nobody = new RatingCase().Structure().Occupant(3, "passenger", DummyType.H3).Occupant(2, "centre", DummyType.H3).Rate();

        Assert.Equal((3, ProtectionLevel.High), (driver.Position, driver.Overall!.Value));
        Assert.Equal(ProtectionLevel.VeryLow, driver.Regions.First(r => r.Position == 1 && r.Region == "head").Level);
        Assert.Contains(driver.Explanation, s => s.StartsWith("Beside the rating, seat 1 (passenger): Head: very low protection", StringComparison.Ordinal));
        Assert.Equal(2, nobody.Position);
    }

    [Fact]
    public void Rate_PassengerNotRated_StillRatesTheDriver() =>
        Assert.Equal(ProtectionLevel.High, RatingCase.Benign().Occupant(3, "passenger", DummyType.H3).Absent("head.hic15", 3).Rate().Overall);

    [Fact]
    public void Rate_RunNotValid_IsRatedForShowAndSaysSo()
    {
        var rating = RatingCase.Benign().Rate(valid: false);

        Assert.Equal((false, ProtectionLevel.High), (rating.Valid, rating.Overall!.Value));
        Assert.Contains(rating.Explanation, s => s.Contains("not valid", StringComparison.Ordinal));
    }

    [Fact]
    public void Rate_NoOccupants_IsNotRated() =>
        Assert.Equal("no dummy was in the vehicle", Rater.Rate(RatingCase.Scheme, new(true, [], [], [])).NotRated);

    [Fact]
    public void Rate_AnyRun_GivesEveryRuleOfTheScheme()
    {
        var rules = RatingCase.Benign().Rate().Rules.Select(r => r.Rule).ToHashSet();

        Assert.Superset(RatingCase.Scheme.Caps.Select(c => c.Rule).ToHashSet(), rules);
        Assert.Superset(RatingCase.Scheme.RegionsOf(DummyType.H3).SelectMany(r => r.Limits).Select(l => $"limit.{l.Measure}").ToHashSet(), rules);
        Assert.Superset(new HashSet<string> { "structure.low", "structure.very-low", "overall.worse", "overall.worst-region", "overall.one-step" }, rules);
    }

    [Fact]
    public void Explanation_AnyRun_NeverLeavesALevelWordAlone()
    {
        var random = new Random(11);
        var sentences = Enumerable.Range(0, 300).Select(_ => Rater.Rate(RatingCase.Scheme, RandomRuns.Draw(random, 0.02, 0.4).Inputs()))
            .SelectMany(r => r.Explanation.Concat(r.Rules.Select(rule => rule.Text)));

        Assert.All(sentences, s =>
        {
            Assert.DoesNotMatch(@"\b(high|moderate|low)\b(?! protection)", s);
            Assert.EndsWith(".", s, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", s, StringComparison.Ordinal);
            Assert.DoesNotContain("∞", s, StringComparison.Ordinal);
        });
    }

    private static RegionRating Region(Rating rating, string region) => rating.Regions.First(r => r.Region == region);

    private static RuleOutcome Rule(Rating rating, string rule) =>
        rating.Rules.OrderByDescending(r => r.Fired).First(r => r.Rule == rule);
}
