using Toepan.Domain.Analysis.Disagreements;
using Toepan.Domain.Measures;
using Toepan.Domain.Measures.Checks;
using Toepan.Domain.Packages;
using Toepan.Domain.Tests.Analysis.Relations;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Disagreements;

public sealed class DisagreementTests
{
    [Fact]
    public void Residuals_SeededPoints_EqualNumpysHatMatrix()
    {
        foreach (var (x, y, expected) in RelationReference.Studentized)
        {
            var found = Residuals.Of(x, y)!.Value.Studentized;

            for (var i = 0; i < expected.Length; i++)
            {
                Assert.InRange(Math.Abs(expected[i] - found[i]), 0, 1e-9);
            }
        }
    }

    [Fact]
    public void Fences_OneToNine_AreThreeRangesBeyondTheQuartiles()
    {
        // Closed form: quartiles of 1…9 (type 7) are 3 and 7, so the fences are 3 − 12 and 7 + 12; on a fence is inside.
        var fences = Fences.Of([1, 2, 3, 4, 5, 6, 7, 8, 9])!;

        Assert.Equal((-9, 19), (fences.Low, fences.High));
        Assert.False(fences.Excludes(19));
        Assert.True(fences.Excludes(19.001));
    }

    [Fact]
    public void Fences_SevenValues_AreNone() => Assert.Null(Fences.Of([1, 2, 3, 4, 5, 6, 7]));

    [Fact]
    public void Class_OneLegFarOffTheLine_IsNamedWithWhatWasExpected()
    {
        var runs = Enumerable.Range(1, 12).Select(i => Run(i, ("structure.footwell.rearward", 20 * i), ("tibia.right.upper.index", i == 5 ? 2.5 : 0.05 * i + (0.002 * (i % 3))))).ToList();

        var found = Assert.Single(ClassDisagreements.Of(runs), one => one.Kind == DisagreementKind.Structure);

        Assert.Equal("FO-0005", found.Test);
        Assert.Contains("With 100 mm of the footwell lost", found.Sentence, StringComparison.Ordinal);
        Assert.Contains("more", found.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Class_OneRunLopsided_IsNamed()
    {
        var runs = Enumerable.Range(1, 12).Select(i => Run(i, ("femur.left.compression", i == 7 ? 9 : 2 + (0.01 * i)), ("femur.right.compression", 2))).ToList();

        var found = Assert.Single(ClassDisagreements.Of(runs), one => one.Kind == DisagreementKind.Sides);

        Assert.Equal("FO-0007", found.Test);
        Assert.Contains("left over right is 4.50", found.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Class_FigureBeyondTheFences_IsNamed()
    {
        var runs = Enumerable.Range(1, 9).Select(i => Run(i, ("chest.deflection", i == 9 ? 60 : 25 + i))).ToList();

        Assert.Equal("FO-0009", Assert.Single(ClassDisagreements.Of(runs)).Test);
    }

    [Fact]
    public void Film_StrikeWithoutContact_IsNamedEvenInASmallClass()
    {
        var check = new CrossCheck(HeadContactBalance.UnfeltCheck, 1, 1, "", "none", false, "At 71 ms.");

        var found = Assert.Single(ClassDisagreements.Of([Run(1) with { Checks = [check] }]));

        Assert.Equal(DisagreementKind.Film, found.Kind);
        Assert.Contains("At 71 ms.", found.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Film_LateAirbagAndLowHeadLoad_Disagree()
    {
        var runs = Enumerable.Range(1, 9).Select(i => Run(i, ("head.hic15", 100 * i))).ToList();
        runs[0] = runs[0] with { Findings = [new Finding(40, "onboard", "airbag-late", "restraint", FindingSeverity.Concern, "", 1, 1)] };

        var found = Assert.Single(ClassDisagreements.Of(runs));

        Assert.Equal(("FO-0001", DisagreementKind.Film), (found.Test, found.Kind));
    }

    private static ClassRun Run(int number, params (string Code, double Value)[] values) => new(
        $"FO-{number:0000}", values.ToDictionary(pair => pair.Code, pair => pair.Value), [], [], Summary: false);
}
