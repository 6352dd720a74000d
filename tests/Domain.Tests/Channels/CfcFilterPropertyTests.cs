using Toepan.Domain.Channels;
using Xunit;

namespace Toepan.Domain.Tests.Channels;

/// <summary>What any linear, time-invariant filter of gain 1 must do; on seeded random signals.</summary>
public sealed class CfcFilterPropertyTests
{
    private const double Dt = 1e-4;

    public static TheoryData<int> Classes => [60, 180, 600, 1000];

    [Theory]
    [MemberData(nameof(Classes))]
    public void Apply_Constant_IsUnchangedFromEndToEnd(int filterClass)
    {
        var filtered = CfcFilter.Apply(Enumerable.Repeat(7.25, 400).ToArray(), Dt, filterClass);

        Assert.All(filtered, value => Assert.Equal(7.25, value, 1e-10));
    }

    [Theory]
    [MemberData(nameof(Classes))]
    public void Apply_Sum_IsSumOfFiltered(int filterClass)
    {
        var (x, y) = (Noise(1), Noise(2));
        var combined = x.Zip(y, (a, b) => (3 * a) - (0.5 * b)).ToArray();

        var (fx, fy, fc) = (CfcFilter.Apply(x, Dt, filterClass), CfcFilter.Apply(y, Dt, filterClass), CfcFilter.Apply(combined, Dt, filterClass));

        Assert.All(Enumerable.Range(0, x.Length), i => Assert.Equal((3 * fx[i]) - (0.5 * fy[i]), fc[i], 1e-11));
    }

    [Theory]
    [MemberData(nameof(Classes))]
    public void Apply_OtherUnit_ScalesExactly(int filterClass)
    {
        var x = Noise(3);
        var doubled = Array.ConvertAll(x, value => value * 1024);

        var (one, other) = (CfcFilter.Apply(x, Dt, filterClass), CfcFilter.Apply(doubled, Dt, filterClass));

        Assert.Equal(Array.ConvertAll(one, value => value * 1024), other);
    }

    [Theory]
    [MemberData(nameof(Classes))]
    public void Apply_PulseLater_GivesTheSamePulseLater(int filterClass)
    {
        var early = Enumerable.Range(0, 3000).Select(i => Math.Exp(-Math.Pow((i - 1200) / 40.0, 2))).ToArray();
        var late = Enumerable.Range(0, 3000).Select(i => Math.Exp(-Math.Pow((i - 1500) / 40.0, 2))).ToArray();

        var (a, b) = (CfcFilter.Apply(early, Dt, filterClass), CfcFilter.Apply(late, Dt, filterClass));

        Assert.All(Enumerable.Range(700, 1000), i => Assert.Equal(a[i], b[i + 300], 1e-12));
    }

    [Theory]
    [MemberData(nameof(Classes))]
    public void Apply_Reversed_IsPhaseless(int filterClass)
    {
        var x = Enumerable.Range(0, 2001).Select(i => Math.Exp(-Math.Pow((i - 900) / 25.0, 2)) - (0.3 * Math.Exp(-Math.Pow((i - 1100) / 60.0, 2)))).ToArray();

        var forward = CfcFilter.Apply(x, Dt, filterClass);
        var backward = CfcFilter.Apply(x.Reverse().ToArray(), Dt, filterClass);

        Assert.All(Enumerable.Range(0, x.Length), i => Assert.Equal(forward[i], backward[x.Length - 1 - i], 1e-10));
    }

    [Fact]
    public void ExtensionCount_ShortAndLongRecords_IsTenMillisecondsOrAllButOne()
    {
        Assert.Equal(100, CfcFilter.ExtensionCount(5000, Dt));
        Assert.Equal(200, CfcFilter.ExtensionCount(5000, 5e-5));
        Assert.Equal(3, CfcFilter.ExtensionCount(4, Dt));
    }

    [Theory]
    [InlineData(1e-4, 1000, true)]
    [InlineData(1.01e-4, 1000, false)]
    [InlineData(1e-3, 60, true)]
    [InlineData(1e-3, 180, false)]
    public void RateSuffices_TenTimesTheClass_IsEnough(double intervalS, int filterClass, bool expected) =>
        Assert.Equal(expected, CfcFilter.RateSuffices(intervalS, filterClass));

    [Fact]
    public void Apply_ThreeSamples_Throws() => Assert.Throws<ArgumentException>(() => CfcFilter.Apply([1, 2, 3], Dt, 60));

    private static double[] Noise(int seed)
    {
        var random = new Random(seed);
        return Enumerable.Range(0, 1500).Select(_ => random.NextDouble() - 0.5).ToArray();
    }
}
