using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Tests.Ratings;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Repeats;

public sealed class RepeatStatisticsTests
{
    [Fact]
    public void Of_TwoValues_DeviationIsTheirDifferenceOverRootTwo()
    {
        // Closed form, standards.md §14.
        var measure = RepeatStatistics.Of("head.hic15", 1, "", [500, 540], 700);

        Assert.Equal([0, 40], measure.Differences);
        Assert.Equal(520, measure.Mean);
        Assert.Equal(40 / Math.Sqrt(2), measure.Sd!.Value, 1e-9);
        Assert.Equal(40 / Math.Sqrt(2) / 520, measure.Cv!.Value, 1e-12);
    }

    [Fact]
    public void Of_NumAcc1_MatchesNist()
    {
        // NIST StRD NumAcc1, certified mean 10000002, s 1 (standards.md §15).
        var measure = RepeatStatistics.Of("x", null, "", [10000001, 10000003, 10000002], null);

        Assert.Equal((10000002, 1), (measure.Mean, measure.Sd));
        Assert.Equal(1 / 10000002.0, measure.Cv!.Value, 1e-18);
    }

    [Fact]
    public void Of_NumAcc4_MatchesNist()
    {
        // NIST StRD NumAcc4, certified mean 10000000.2, s 0.1: fails a naive sum of squares (standards.md §15).
        double?[] values = [10000000.2, .. Enumerable.Range(0, 1000).Select(i => i % 2 == 0 ? 10000000.1 : 10000000.3).Cast<double?>()];
        var measure = RepeatStatistics.Of("x", null, "", values, null);

        Assert.Equal(10000000.2, measure.Mean!.Value, 1e-6);
        Assert.Equal(0.1, measure.Sd!.Value, 1e-8);
    }

    [Theory]
    [InlineData(0.06, 0.07, 7.0, "1 % of the limit")]
    [InlineData(-1.0, 1.0, null, "zero")]
    [InlineData(5.0, null, 7.0, "fewer than two")]
    public void Of_MeanNearZeroOrOneValue_GivesNoCvAndSaysWhy(double? a, double? b, double? limit, string reason)
    {
        var measure = RepeatStatistics.Of("neck.compression", 1, "kN", [a, b], limit);

        Assert.Null(measure.Cv);
        Assert.Contains(reason, measure.NoCv, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_FirstRunAbsent_HasNoDifferences() =>
        Assert.Equal([null, null, null], RepeatStatistics.Of("x", null, "", [null, 1, 3], null).Differences);

    [Fact]
    public void Pooled_ThreeGroups_ByFormula()
    {
        // √((1·0.1² + 2·0.2² + 1·0.3²)/4) = √0.045.
        Assert.Equal(Math.Sqrt(0.045), RepeatStatistics.Pooled([(2, 0.1), (3, 0.2), (2, 0.3)])!.Value, 1e-12);
        Assert.Null(RepeatStatistics.Pooled([]));
    }

    [Fact]
    public void Find_TwoGroups_IsTheSchemesDefaultAndThreeArePooled()
    {
        RepeatGroup[] groups = [new("a", "head.hic15", [500, 540]), new("b", "head.hic15", [300, 310]), new("c", "head.hic15", [900, 800])];

        var few = ScatterTable.Of(RatingCase.Scheme, groups.Take(2)).Find("head.hic15")!;
        var enough = ScatterTable.Of(RatingCase.Scheme, groups).Find("head.hic15")!;

        Assert.Equal((0.2, 0), (few.Size, few.RepeatGroups));
        double[] cvs = [40 / Math.Sqrt(2) / 520, 10 / Math.Sqrt(2) / 305, 100 / Math.Sqrt(2) / 850];
        Assert.Equal(Math.Sqrt(cvs.Sum(cv => cv * cv) / 3), enough.Size, 1e-12);
        Assert.Equal(3, enough.RepeatGroups);
    }

    [Fact]
    public void Find_Displacement_PoolsStandardDeviations()
    {
        RepeatGroup[] groups = [.. "abc".Select(key => new RepeatGroup(key.ToString(), "structure.wheel-hub.upward", [-1, 1]))];
        var scatter = ScatterTable.Of(RatingCase.Scheme, groups).Find("structure.wheel-hub.upward")!;

        Assert.Equal(ScatterKind.Normal, scatter.Kind);
        Assert.Equal(Math.Sqrt(2), scatter.Size, 1e-11);
    }

    [Fact]
    public void Find_EveryFigureOfTheScheme_HasAScatter()
    {
        var table = ScatterTable.Of(RatingCase.Scheme, []);
        var scheme = RatingCase.Scheme;
        var codes = scheme.Regions.SelectMany(region => region.Limits.Select(limit => limit.Measure).Concat(region.Measures.Select(rated => rated.Measure)))
            .Concat(scheme.Structure.Measures.Select(rated => rated.Measure));

        Assert.All(codes, code => Assert.NotNull(table.Find(code)));
    }
}
