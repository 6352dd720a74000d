using Toepan.Domain.Analysis;
using Xunit;

namespace Toepan.Domain.Tests.Analysis;

public sealed class SampleStatisticsTests
{
    /// <summary>NIST StRD, univariate summary statistics, data sets NumAcc1, NumAcc3 and NumAcc4 (public domain); certified values exact.</summary>
    [Fact]
    public void Of_NistNumAcc1_GivesCertifiedMeanAndDeviation()
    {
        var statistics = SampleStatistics.Of([10_000_001, 10_000_003, 10_000_002]);

        Assert.Equal(10_000_002, statistics.Mean!.Value, 0);
        Assert.Equal(1, statistics.Sd!.Value, 0);
    }

    [Theory]
    [InlineData(1_000_000, 1e-9)]
    [InlineData(10_000_000, 1e-8)]
    public void Of_NistNumAcc3And4_GivesCertifiedMeanAndDeviation(double whole, double tolerance)
    {
        var values = Enumerable.Range(0, 1001).Select(i => whole + (i == 0 ? 0.2 : i % 2 == 1 ? 0.1 : 0.3)).ToList();

        var statistics = SampleStatistics.Of(values);

        // The tolerance is what the inputs, which are no exact doubles, leave of 0.1.
        Assert.Equal(whole + 0.2, statistics.Mean!.Value, tolerance);
        Assert.Equal(0.1, statistics.Sd!.Value, tolerance);
    }

    [Fact]
    public void Of_SameValuesInAnyOrder_GivesSameBits()
    {
        double[] values = [3.7, 1e6, -2.5, 0.1, 0.2, 0.3, 1e-3];
        var shuffled = values.Reverse().ToArray();

        Assert.Equal(SampleStatistics.Of(values), SampleStatistics.Of(shuffled));
    }

    /// <summary>Type 7, Hyndman and Fan (1996), by hand: h = (n − 1)p.</summary>
    [Theory]
    [InlineData(new double[] { 1, 2, 3, 4 }, 1.75, 2.5, 3.25)]
    [InlineData(new double[] { 5, 1, 3 }, 2, 3, 4)]
    [InlineData(new double[] { 7 }, 7, 7, 7)]
    [InlineData(new double[] { 10, 20 }, 12.5, 15, 17.5)]
    public void Of_Quartiles_AreOfType7(double[] values, double lower, double median, double upper)
    {
        var statistics = SampleStatistics.Of(values);

        Assert.Equal((lower, median, upper), (statistics.LowerQuartile, statistics.Median, statistics.UpperQuartile));
    }

    [Fact]
    public void Of_Nothing_GivesCountZeroAndNothingElse() =>
        Assert.Equal(new SampleStatistics(0, null, null, null, null, null, null, null), SampleStatistics.Of([]));

    [Fact]
    public void Of_OneValue_HasNoDeviation() => Assert.Null(SampleStatistics.Of([4.2]).Sd);

    [Fact]
    public void Of_NotANumber_IsRefused() => Assert.Throws<ArgumentException>(() => SampleStatistics.Of([1, double.NaN]));
}
