using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;
using Toepan.Domain.Sheets;
using Xunit;

namespace Toepan.Domain.Tests.Sheets;

/// <summary>The sheet says what the facts say, in words and rounded figures; expected sentences are worked out by hand here.</summary>
public sealed class SheetComposerTests
{
    // 24.44 cm and 9.62 in for 244.4 mm: one decimal, half away from zero.
    [Fact]
    public void Compose_Displacements_AreGivenInCentimetresAndInches()
    {
        var sheet = Compose(Facts() with { Measures = [Vehicle("structure.footwell.rearward", 244.4), Vehicle("structure.opening.closure", 96.6)] });

        Assert.Equal(
            ["The footwell came 24.4 cm (9.6 in) towards the driver.", "The door opening became 9.7 cm (3.8 in) shorter."], sheet.Space);
    }

    [Theory]
    [InlineData(0.0049, "Of 100 adults of about average man's size, fewer than 1 would be expected to suffer a serious head injury.")]
    [InlineData(0.0050, "Of 100 adults of about average man's size, about 1 would be expected to suffer a serious head injury.")]
    [InlineData(0.365, "Of 100 adults of about average man's size, about 37 would be expected to suffer a serious head injury.")]
    public void Compose_Risk_IsACountOfOneHundred(double risk, string expected)
    {
        var sheet = Compose(Facts() with { Rating = Rated(Region("head", ProtectionLevel.Low, risk)) });

        Assert.Equal(expected, sheet.Regions[0].Sentence);
    }

    [Fact]
    public void Compose_LeftAndRight_StandAsTheWorse()
    {
        var rating = Rated(Region("thigh.left", ProtectionLevel.High, 0.01), Region("thigh.right", ProtectionLevel.Low, 0.31));

        var thighs = Compose(Facts() with { Rating = rating }).Regions[3];

        Assert.Equal(ProtectionLevel.Low, thighs.Level);
        Assert.Contains("about 31 ", thighs.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Compose_RunNotValid_SaysItIsNotForReleaseAndWhy()
    {
        var conduct = new ConductJudgement([new("overlap", 42.3m, "%", 39, 41, -1.3m, Verdict.Outside, true, "common practice, no source")]);

        var sheet = Compose(Facts() with { Conduct = conduct, Rating = Rated() with { Valid = false } });

        Assert.Equal("This run was outside its tolerances and is not for release: overlap.", sheet.NotForRelease);
    }

    [Fact]
    public void Compose_OverallCappedByAFinding_NamesIt()
    {
        var capped = Rated() with { Rules = [new("cap.door-opened", true, true, null, null, "…")] };

        Assert.Equal("What decided it: a door came open in the crash.", Compose(Facts() with { Rating = capped }).Because);
    }

    [Fact]
    public void Compose_NotedFinding_IsLeftToTheLaboratory()
    {
        var note = new Finding(70, "onboard", "head-strike", "head", FindingSeverity.Note, "airbag", 1, 2);

        Assert.Equal(["Nothing beyond what the instruments measured."], Compose(Facts() with { Findings = [note] }).Inspection);
    }

    // The finding kinds of the package format; common practice, no source.
    [Fact]
    public void English_EveryFindingKind_HasASentence()
    {
        string[] kinds =
        [
            "door-opened", "door-jammed", "head-strike", "wheel-contact", "occupant-trapped", "dummy-damaged", "airbag-late", "airbag-missed",
            "belt-failure", "seat-pitched", "seat-anchorage-failed", "floor-buckled", "seam-separated", "column-detached", "fuel-leak", "fire",
            "isolation-lost", "voltage-present", "electrolyte-leak", "thermal-event",
        ];

        Assert.All(kinds, kind => Assert.True(SheetTexts.English.Knows($"finding.{kind}"), kind));
    }

    private static ConsumerSheet Compose(SheetFacts facts) => SheetComposer.Compose(facts, SheetTexts.English);

    private static Measure Vehicle(string code, double mm) => new() { Code = code, Unit = "mm", Value = mm };

    private static RegionRating Region(string region, ProtectionLevel level, double risk) =>
        new(region, 1, level, null, null, null, null, null, risk, risk, level, []);

    private static Rating Rated(params RegionRating[] regions) => new()
    {
        Scheme = "offset-frontal-1",
        Valid = true,
        Overall = ProtectionLevel.Low,
        NotRated = null,
        Position = 1,
        Regions = [.. regions, .. new[] { "head", "neck", "chest", "thigh.left", "lowerleg.left" }
            .Where(name => !regions.Any(region => region.Region == name)).Select(name => Region(name, ProtectionLevel.High, 0.01))],
        Structure = new("structure", null, ProtectionLevel.High, null, null, null, null, null, null, null, null, []),
        LifeExcess = 0.2,
        LegsExcess = 0.1,
        Rules = [],
        Explanation = [],
    };

    private static SheetFacts Facts() => new()
    {
        Vehicle = "Tarnbrook Voyle",
        ModelYearFrom = 2030,
        ModelYearTo = 2032,
        ClassTitle = "light delivery vans",
        Twins = [],
        Test = "FO-0042",
        Date = new DateOnly(2031, 3, 14),
        Rating = Rated(),
        Measures = [],
        Findings = [],
        Occupants = [new Occupant(1, "driver", DummyType.H3)],
        Conduct = new ConductJudgement([]),
        TestMassKg = 1834.5m,
        MethodEdition = "1",
        PackageSha256 = new string('0', 64),
    };
}
