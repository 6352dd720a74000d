using Toepan.Web.Components;

namespace Toepan.Web.Tests.Components;

public sealed class DisplayUnitsTests
{
    // NIST SP 811: 1 in = 25.4 mm, 1 mi = 1.609344 km, 1 lbf = 4.4482216152605 N, 1 lbf·ft = 1.3558179483314 N·m, t/°F = 1.8 t/°C + 32.
    [Theory]
    [InlineData(254.0, "mm", "10.00", "in")]
    [InlineData(64.37376, "km/h", "40.00", "mph")]
    [InlineData(4.4482216152605, "kN", "1000", "lbf")]
    [InlineData(135.58179483314, "N·m", "100.0", "lbf·ft")]
    [InlineData(21.5, "°C", "70.7", "°F")]
    [InlineData(31.2, "g", "31.2", "g")]
    public void Show_UsUnits_ConvertsByThePublishedFactors(double value, string unit, string number, string shownUnit) =>
        Assert.Equal(new ShownFigure(number, shownUnit), DisplayUnits.Show(value, unit, UnitSystem.Us));

    [Fact]
    public void Show_DifferenceOfTemperatures_LeavesTheOffsetOut() =>
        Assert.Equal(new ShownFigure("1.8", "°F"), DisplayUnits.Show(1, "°C", UnitSystem.Us, difference: true));

    [Theory]
    [InlineData(0.125, "kN", "0.13")]
    [InlineData(-0.125, "kN", "\u22120.13")]
    [InlineData(-0.0001, "kN", "0.00")]
    [InlineData(412.5, "", "413")]
    public void Show_Rounding_IsHalfAwayFromZeroAndNeverMinusZero(double value, string unit, string number) =>
        Assert.Equal(number, DisplayUnits.Show(value, unit, UnitSystem.Metric).Number);

    [Theory]
    [InlineData(null)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Show_NoFiniteValue_IsADash(double? value) => Assert.Equal(ShownFigure.Nothing, DisplayUnits.Show(value, "mm", UnitSystem.Metric));
}
