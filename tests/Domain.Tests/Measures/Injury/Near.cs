using Xunit;

namespace Toepan.Domain.Tests.Measures.Injury;

/// <summary>Comparisons with a stated reason for their tolerance.</summary>
internal static class Near
{
    /// <summary>Half a unit of the eighth decimal: the check cases are printed with eight.</summary>
    public const double EightDecimals = 0.5001e-8;

    public static void To(double expected, double? actual, double tolerance)
    {
        Assert.NotNull(actual);
        Assert.True(Math.Abs(expected - actual.Value) <= tolerance, $"expected {expected:R}, got {actual:R}");
    }

    /// <summary>Relative difference.</summary>
    public static void Relative(double expected, double? actual, double tolerance = 1e-9) => To(expected, actual, tolerance * Math.Abs(expected));
}
