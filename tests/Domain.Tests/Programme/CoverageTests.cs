using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Programme;

/// <summary>Expected figures worked out by hand.</summary>
public sealed class CoverageTests
{
    [Fact]
    public void Of_SomeShares_WeighsOnlyTheVehiclesThatHaveOne() => Assert.Equal(
        new Coverage(2, 4, 3, 75m),
        Coverage.Of([new(true, 30), new(false, 10), new(true, null), new(false, 0)]));

    [Fact]
    public void Of_NoShares_HasNoWeightedFigure() => Assert.Equal(new Coverage(1, 2, 0, null), Coverage.Of([new(true, null), new(false, null)]));

    [Fact]
    public void Of_SharesOfNothing_HasNoWeightedFigure() => Assert.Null(Coverage.Of([new(true, 0)]).WeightedPercent);

    [Fact]
    public void Of_NoVehicles_IsZeroOfZero() => Assert.Equal(new Coverage(0, 0, 0, null), Coverage.Of([]));
}
