using Toepan.Domain.Channels;
using Xunit;

namespace Toepan.Domain.Tests.Channels;

/// <summary>Bounds in time as integers; settled reading "Time" of methods edition 1.</summary>
public sealed class SampleGridTests
{
    [Theory]
    [InlineData(1e-4)]
    [InlineData(5e-5)]
    [InlineData(1e-5)]
    [InlineData(8e-5)]
    public void Between_BoundsOnTheGrid_CountsBothForEveryStart(double intervalS)
    {
        for (var before = 0; before < 2000; before++)
        {
            var range = SampleGrid.Between(-before * intervalS, intervalS, 100_000, 0, 1000 * intervalS);
            Assert.Equal((before, 1001), (range.First, range.Count));
        }
    }

    [Theory]
    [InlineData(0.015, 1e-4, 150)]
    [InlineData(0.036, 1e-4, 360)]
    [InlineData(0.015, 5e-5, 300)]
    [InlineData(0.015, 8e-5, 187)]
    public void Within_Duration_IsTheMostIntervalsThatFit(double durationS, double intervalS, int expected) =>
        Assert.Equal(expected, SampleGrid.Within(durationS, intervalS));

    [Theory]
    [InlineData(0.010, 1e-4, 100)]
    [InlineData(0.010, 8e-5, 125)]
    [InlineData(0.003, 7e-5, 43)]
    public void Reaching_Duration_IsTheFewestIntervalsThatReach(double durationS, double intervalS, int expected) =>
        Assert.Equal(expected, SampleGrid.Reaching(durationS, intervalS));

    [Fact]
    public void Between_NothingInside_IsEmpty()
    {
        Assert.Equal(0, SampleGrid.Between(1, 1e-4, 100, 0, 0.3).Count);
        Assert.Equal(0, SampleGrid.Between(-1, 1e-4, 100, 0, 0.3).Count);
        Assert.Equal(0, SampleGrid.Between(-1, double.Epsilon, 100, 0, 0.3).Count);
    }
}
