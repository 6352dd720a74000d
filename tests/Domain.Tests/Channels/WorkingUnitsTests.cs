using Toepan.Domain.Channels;
using Xunit;

namespace Toepan.Domain.Tests.Channels;

/// <summary>Units of methods edition 1; g0 = 9.80665 m/s² exact (3rd CGPM, 1901).</summary>
public sealed class WorkingUnitsTests
{
    [Theory]
    [InlineData("g", "g", 1)]
    [InlineData("m/(s*s)", "g", 1 / 9.80665)]
    [InlineData("M/S2", "g", 1 / 9.80665)]
    [InlineData("m / s^2", "g", 1 / 9.80665)]
    [InlineData("m/s**2", "g", 1 / 9.80665)]
    [InlineData("m/s²", "g", 1 / 9.80665)]
    [InlineData("N", "kN", 0.001)]
    [InlineData("KN", "kN", 1)]
    [InlineData("Nm", "N·m", 1)]
    [InlineData("N*m", "N·m", 1)]
    [InlineData("N.m", "N·m", 1)]
    [InlineData("N·m", "N·m", 1)]
    [InlineData("mm", "mm", 1)]
    [InlineData("cm", "mm", 10)]
    [InlineData(" m ", "mm", 1000)]
    [InlineData("deg", "deg", 1)]
    [InlineData("rad/s", "rad/s", 1)]
    [InlineData("deg/s", "rad/s", Math.PI / 180)]
    public void Find_KnownSpelling_ConvertsToTheWorkingUnit(string unit, string working, double factor)
    {
        var found = WorkingUnits.Find(unit)!.Value;

        Assert.Equal(working, found.WorkingUnit);
        Assert.Equal(factor, found.Factor, 1e-15);
    }

    [Theory]
    [InlineData("")]
    [InlineData("NOVALUE")]
    [InlineData("furlong")]
    [InlineData("lbf")]
    [InlineData("m/s3")]
    public void Find_UnknownUnit_IsNull(string unit) => Assert.Null(WorkingUnits.Find(unit));
}
