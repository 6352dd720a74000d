using Toepan.Domain.Analysis;
using Toepan.Domain.Analysis.Relations;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Relations;

/// <summary>Against scipy 1.10.1 (pearsonr with its interval, spearmanr, theilslopes); Spearman's interval against its formula written again in Python.</summary>
public sealed class RelationTests
{
    [Theory]
    [MemberData(nameof(RelationReference.Cases), MemberType = typeof(RelationReference))]
    public void Correlation_SeededPoints_EqualsScipy(int index)
    {
        var found = RelationReference.At(index);

        Same(found.Pearson, Correlation.Pearson(found.X, found.Y)!);
        Same(found.Spearman, Correlation.Spearman(found.X, found.Y)!);
    }

    [Theory]
    [MemberData(nameof(RelationReference.Cases), MemberType = typeof(RelationReference))]
    public void TheilSen_SeededPoints_EqualsScipy(int index)
    {
        var found = RelationReference.At(index);

        var line = TheilSen.Of(found.X, found.Y)!;

        Near(found.TheilSen[0], line.Slope);
        Near(found.TheilSen[1], line.Intercept);
        Near(found.TheilSen[2], line.SlopeInterval.Low);
        Near(found.TheilSen[3], line.SlopeInterval.High);
    }

    [Fact]
    public void TheilSen_OneWildPoint_KeepsTheLine()
    {
        // Closed form: nine points of y = 2x + 1 and one far away leave the median slope at 2.
        double[] x = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9];
        var y = Array.ConvertAll(x, value => (2 * value) + 1);
        y[4] = 1e6;

        Assert.Equal(2, TheilSen.Of(x, y)!.Slope);
    }

    [Fact]
    public void Pearson_Line_IsOne() => Assert.Equal(1, Correlation.Pearson([1, 2, 3, 4, 5], [2, 4, 6, 8, 10])!.Value, 15);

    [Fact]
    public void Pearson_NothingVaries_IsNotGiven() => Assert.Null(Correlation.Pearson([1, 1, 1, 1], [1, 2, 3, 4]));

    [Fact]
    public void TheilSen_OneX_HasNoLine() => Assert.Null(TheilSen.Of([2, 2, 2], [1, 2, 3]));

    [Fact]
    public void MassComparison_BoundsOfTheRatio_AreInclusive()
    {
        Assert.Equal(MassStanding.Comparable, MassComparison.Of(1650, 1500));
        Assert.Equal(MassStanding.WithCaution, MassComparison.Of(1500, 1725));
        Assert.Equal(MassStanding.NotComparable, MassComparison.Of(1500, 1726));
        Assert.Equal(MassStanding.Unknown, MassComparison.Of(1500, null));
    }

    private static void Same(double[] expected, Correlation found)
    {
        Near(expected[0], found.Value);
        Near(expected[1], found.Interval.Low);
        Near(expected[2], found.Interval.High);
        Assert.InRange(Math.Abs(expected[3] - found.Probability), 0, 1e-9 + (1e-6 * expected[3]));
    }

    // Twelve digits: both sides form the same sums in another order.
    private static void Near(double expected, double value) => Assert.InRange(Math.Abs(expected - value), 0, 1e-12 * Math.Max(1, Math.Abs(expected)));
}
