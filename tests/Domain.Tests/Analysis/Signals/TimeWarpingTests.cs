using Toepan.Domain.Analysis.Signals;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Signals;

/// <summary>Dynamic time warping against the obvious one: every path is walked.</summary>
public sealed class TimeWarpingTests
{
    public static TheoryData<int, int> Cases
    {
        get
        {
            var cases = new TheoryData<int, int>();
            for (var seed = 0; seed < 40; seed++)
            {
                cases.Add(seed, seed % 8);
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Align_RandomSignals_CostsAsLittleAsTheBestOfAllPaths(int seed, int window)
    {
        var random = new Random(seed);
        var length = random.Next(1, 8);
        double[] t = Draw(random, length), c = Draw(random, length);

        var warped = TimeWarping.Align(t, c, window);

        Assert.Equal(CheapestOfAll(t, c, 0, 0, window), warped.Cost, 1e-12);
        Assert.Equal(warped.Cost, warped.Reference.Zip(warped.Compared, (a, b) => (a - b) * (a - b)).Sum(), 1e-12);
        Assert.Equal((t[0], c[0], t[^1], c[^1]), (warped.Reference[0], warped.Compared[0], warped.Reference[^1], warped.Compared[^1]));
    }

    [Fact]
    public void Align_StretchedSignal_IsUndone()
    {
        var warped = TimeWarping.Align([0, 1, 5, 5, 5, 0], [0, 1, 1, 1, 5, 0], 2);

        Assert.Equal(0, warped.Cost);
    }

    [Fact]
    public void Align_WindowZero_PairsEqualIndices()
    {
        var warped = TimeWarping.Align([1, 2, 3], [3, 2, 1], 0);

        Assert.Equal([3, 2, 1], warped.Compared);
        Assert.Equal(8, warped.Cost);
    }

    private static double[] Draw(Random random, int length) => [.. Enumerable.Range(0, length).Select(_ => (double)random.Next(-9, 10))];

    private static double CheapestOfAll(double[] t, double[] c, int i, int j, int window)
    {
        if (i >= t.Length || j >= c.Length || Math.Abs(i - j) > window)
        {
            return double.PositiveInfinity;
        }

        var here = (t[i] - c[j]) * (t[i] - c[j]);
        return i == t.Length - 1 && j == c.Length - 1
            ? here
            : here + new[] { (1, 1), (1, 0), (0, 1) }.Min(step => CheapestOfAll(t, c, i + step.Item1, j + step.Item2, window));
    }
}
