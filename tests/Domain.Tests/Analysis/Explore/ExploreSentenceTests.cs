using Toepan.Domain.Analysis;
using Toepan.Domain.Analysis.Explore;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Explore;

public sealed class ExploreSentenceTests
{
    private static readonly ExploreWords Words = new("vans", "chest deflection", "mm", "tibia index", "classes");

    [Fact]
    public void Relation_Line_SaysMoreGoesWithMore() => Assert.StartsWith(
        "Of 6 vans, those with more chest deflection tend to have more tibia index (r = 0.9", ExploreSentences.Of(Relation.Of(Points([1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 7])), Words), StringComparison.Ordinal);

    [Fact]
    public void Relation_IntervalHoldsZero_ClaimsNothing() => Assert.Contains(
        "not seen to go together", ExploreSentences.Of(Relation.Of(Points([1, 2, 3, 4, 5, 6], [3, 1, 2, 3, 1, 2.5])), Words), StringComparison.Ordinal);

    [Fact]
    public void Trend_SteadyFall_SaysHowMuchAYear()
    {
        // Closed form: y = 100 − 2·year with a little noise that sums to nothing about the line.
        double[] values = [100, 98.1, 95.9, 94, 91.9, 90.1, 88];
        var points = values.Select((value, i) => Point(i, value, 0) with { ModelYear = 2020 + i });

        Assert.StartsWith("Across 7 vans of model years 2020 to 2026, chest deflection falls by 2.00 mm a year", ExploreSentences.Of(Trend.Of(points), Words), StringComparison.Ordinal);
    }

    [Fact]
    public void Ranked_MassesFarApart_IsNoRanking()
    {
        ExplorePoint[] points = [Point(0, 40, 1500), Point(1, 30, 1800)];

        Assert.Contains("no ranking", ExploreSentences.Ranked(points, Words), StringComparison.Ordinal);
    }

    [Fact]
    public void Statistics_FewValues_GiveTheirEnds() => Assert.Equal(
        "2 vans have this figure, from 3.00 mm to 4.50 mm.", ExploreSentences.Of(SampleStatistics.Of([3, 4.5]), Words));

    private static IReadOnlyList<ExplorePoint> Points(double[] x, double[] y) => [.. x.Select((value, i) => Point(i, value, 1500) with { Y = y[i] })];

    private static ExplorePoint Point(int number, double x, double mass) =>
        new($"FO-{number + 1:0000}", $"vehicle-{number}", "Quillon Bullace", "van", "Vans", null, mass, "Vans", false, x, double.NaN);
}
