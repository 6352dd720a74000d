using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;
using Toepan.Domain.Sheets;
using Xunit;

namespace Toepan.Domain.Tests.Sheets;

/// <summary>The sheet says what the facts say, in words and rounded figures; expected sentences are worked out by hand here.</summary>
public sealed class SheetComposerTests
{
    // 244.4 mm = 24.44 cm = 9.62 in: whole centimetres, tenths of an inch, half away from zero; 4.9 mm is under half a centimetre.
    [Fact]
    public void Compose_Displacements_AreGivenInCentimetresAndInches()
    {
        var sheet = Compose(SheetCases.Facts() with { Measures = [SheetCases.Vehicle("structure.footwell.rearward", 244.4), SheetCases.Vehicle("structure.opening.closure", 4.9)] });

        Assert.Equal(
            ["The floor at the feet moved 24\u00a0cm (9.6\u00a0in) back.", "The door opening became less than 1\u00a0cm (0.2\u00a0in) shorter."],
            sheet.In("en").Space.Select(sentence => sentence.Text));
        Assert.Equal("Der Boden an den Füßen rückte 24\u00a0cm nach hinten.", sheet.In("de").Space[0].Text);
    }

    [Theory]
    [InlineData(0.0049, "Of 100 such adults, fewer than 1 would be expected to suffer a serious head injury.")]
    [InlineData(0.0050, "Of 100 such adults, about 1 would be expected to suffer a serious head injury.")]
    [InlineData(0.365, "Of 100 such adults, about 37 would be expected to suffer a serious head injury.")]
    public void Compose_Risk_IsACountOfOneHundred(double risk, string expected)
    {
        var sheet = Compose(SheetCases.Facts() with { Rating = SheetCases.Rated(SheetCases.Region("head", ProtectionLevel.Low, risk)) });

        Assert.Equal(expected, sheet.In("en").Regions[0].Sentence.Text);
    }

    [Fact]
    public void Compose_RepeatRangeKnown_StandsBesideTheRisk()
    {
        var facts = SheetCases.Facts() with { Rating = SheetCases.Rated(SheetCases.Region("chest", ProtectionLevel.Low, 0.07)), Ranges = [new("chest", 0.001, 0.116)] };

        Assert.EndsWith("about 7 would be expected to suffer a serious chest injury (fewer than 1–12 if repeated).", Compose(facts).In("en").Regions[2].Sentence.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Compose_LeftAndRight_StandAsTheWorse()
    {
        var rating = SheetCases.Rated(SheetCases.Region("thigh.left", ProtectionLevel.High, 0.01), SheetCases.Region("thigh.right", ProtectionLevel.Low, 0.31));

        var sheet = Compose(SheetCases.Facts() with { Rating = rating });

        Assert.Equal(ProtectionLevel.Low, sheet.Regions[3].Level);
        Assert.Contains("about 31 ", sheet.In("en").Regions[3].Sentence.Text, StringComparison.Ordinal);
        Assert.Equal("risk.thigh.right", sheet.Figure("risk.thigh")!.Code);
    }

    [Fact]
    public void Compose_TwoValidRuns_ShowsBothAndSaysWhichCounts()
    {
        var day = new DateOnly(2031, 3, 14);
        var sheet = Compose(SheetCases.Facts() with
        {
            Runs = [new("FO-0042", day, ProtectionLevel.Low, true), new("FO-0043", day.AddDays(9), ProtectionLevel.Moderate, false)],
        });

        Assert.Equal("2 valid crashes were run. FO-0042: Low protection and FO-0043: Moderate protection. The lower one counts.", sheet.In("en").Holds[1].Text);
    }

    [Theory]
    [InlineData(0.84, 0.78, "Of 100 repeats, 78 to 84 would be expected to give the same level.")]
    [InlineData(1.0, 1.0, "Of 100 repeats, more than 99 would be expected to give the same level.")]
    public void Compose_Chance_IsNeverCertain(double independent, double correlated, string expected) =>
        Assert.Equal(expected, Compose(SheetCases.Facts() with { Holds = new(independent, correlated) }).In("en").Holds[0].Text);

    [Fact]
    public void Compose_RunNotValid_SaysItIsNotForReleaseAndWhy()
    {
        var conduct = new ConductJudgement([new("overlap", 42.3m, "%", 39, 41, -1.3m, Verdict.Outside, true, "common practice, no source")]);

        var sheet = Compose(SheetCases.Facts() with { Conduct = conduct, Rating = SheetCases.Rated() with { Valid = false } });

        Assert.Equal("invalid", sheet.NotForRelease);
        Assert.Equal("This run was outside its tolerances and is not for release: overlap.", sheet.In("en").NotForRelease!.Text);
    }

    [Fact]
    public void Compose_OverallCappedByAFinding_NamesIt()
    {
        var capped = SheetCases.Rated() with { Rules = [new("cap.door-opened", true, true, null, null, "…")] };

        Assert.Equal("What decided it: a door came open in the crash.", Compose(SheetCases.Facts() with { Rating = capped }).In("en").Because.Text);
    }

    [Fact]
    public void Compose_NotedFinding_IsLeftToTheLaboratory()
    {
        var note = new Finding(70, "onboard", "head-strike", "head", FindingSeverity.Note, "airbag", 1, 2);

        var sheet = Compose(SheetCases.Facts() with { Findings = [note] });

        Assert.Equal("Nothing beyond what the instruments measured.", Assert.Single(sheet.In("en").Inspection).Text);
    }

    [Fact]
    public void Compose_WordingOfAnEditor_StandsWithTheSameFigures()
    {
        var facts = SheetCases.Facts() with { Measures = [SheetCases.Vehicle("structure.footwell.rearward", 244.4)] };
        var wording = new SheetWording("en", "space.footwell", "space.footwell", "The floor came {move} towards the driver.");

        Assert.Equal("The floor came 24\u00a0cm (9.6\u00a0in) towards the driver.", Compose(facts with { Wordings = [wording] }).In("en").Space[0].Text);
        Assert.Equal(Compose(facts).In("de").Space[0].Text, Compose(facts with { Wordings = [wording] }).In("de").Space[0].Text);
    }

    [Fact]
    public void Compose_WordingForAnotherReason_IsLeftOut()
    {
        var facts = SheetCases.Facts() with { Wordings = [new("en", "because", "because.structure", "The passenger space gave way.")] };

        Assert.StartsWith("What decided it: the loads on the", Compose(facts).In("en").Because.Text, StringComparison.Ordinal);
    }

    private static SheetDocument Compose(SheetFacts facts) => SheetComposer.Compose(facts);
}
