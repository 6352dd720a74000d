using Toepan.Domain.Analysis;
using Xunit;

namespace Toepan.Domain.Tests.Analysis;

public sealed class LeastSquaresTests
{
    // NIST StRD, linear regression, data set Norris (public domain): 36 pairs y, x and certified values.
    private static readonly double[] Norris =
    [
        0.1, 0.2, 338.8, 337.4, 118.1, 118.2, 888.0, 884.6, 9.2, 10.1, 228.1, 226.5, 668.5, 666.3, 998.5, 996.3, 449.1, 448.6, 778.9, 777.0,
        559.2, 558.2, 0.3, 0.4, 0.1, 0.6, 778.1, 775.5, 668.8, 666.9, 339.3, 338.0, 448.9, 447.5, 10.8, 11.6, 557.7, 556.0, 228.3, 228.1,
        998.0, 995.8, 888.8, 887.6, 119.6, 120.2, 0.3, 0.3, 0.6, 0.3, 557.6, 556.8, 339.3, 339.1, 888.0, 887.2, 998.5, 999.0, 778.9, 779.0,
        10.2, 11.1, 117.6, 118.3, 228.9, 229.2, 668.4, 669.1, 449.2, 448.9, 0.2, 0.5,
    ];

    [Fact]
    public void Of_Norris_MeetsTheCertifiedValues()
    {
        var y = Norris.Where((_, i) => i % 2 == 0).ToArray();
        var x = Norris.Where((_, i) => i % 2 == 1).ToArray();

        var line = LeastSquares.Of(x, y)!;

        Near(1.00211681802045, line.Slope);
        Near(0.429796848199937e-3, line.SlopeError);
        Near(-0.262323073774029, line.Intercept);
        Near(0.232818234301152, line.InterceptError);
        Near(0.884796396144373, line.ResidualSd);
        Near(0.999993745883712, line.RSquared);
    }

    [Fact]
    public void Of_OneX_HasNoLine() => Assert.Null(LeastSquares.Of([2, 2, 2], [1, 2, 3]));

    [Fact]
    public void Of_TwoPoints_HasNoLine() => Assert.Null(LeastSquares.Of([1, 2], [1, 2]));

    private static void Near(double certified, double value) => Assert.InRange(Math.Abs(value / certified - 1), 0, 1e-11);
}
