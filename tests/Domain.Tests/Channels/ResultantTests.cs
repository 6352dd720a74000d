using Toepan.Domain.Channels;
using Xunit;

namespace Toepan.Domain.Tests.Channels;

public sealed class ResultantTests
{
    [Fact]
    public void Of_ThreeComponents_IsTheRootOfSquaresOnCommonSamples()
    {
        var answer = Resultant.Of([Component([3, 0, 1]), Component([4, 5, 2, 9]), Component([12, 12, 2])]);

        Assert.Equal([13, 13, 3], answer.History!.Values.ToArray());
    }

    /// <summary>Standards.md §16-2, 3-axis case: max resultant 65.70295698.</summary>
    [Fact]
    public void Of_PublishedThreeAxisCase_HasItsMaximum()
    {
        var t = Enumerable.Range(0, 1501).Select(i => i * 1e-4).ToArray();
        var x = t.Select(s => s <= 0.1 ? 60 * Math.Sin(Math.PI * s / 0.1) : 0).ToArray();
        var y = t.Select(s => s <= 0.1 ? 20 * Math.Sin(2 * Math.PI * s / 0.1) : 0).ToArray();
        var z = t.Select(s => 30 * Math.Exp(-Math.Pow((s - 0.06) / 0.01, 2))).ToArray();

        Assert.Equal(65.70295698, Resultant.Of([Component(x), Component(y), Component(z)]).History!.Values.ToArray().Max(), 5e-9);
    }

    /// <summary>Property: turning the axes changes no resultant.</summary>
    [Fact]
    public void Of_TurnedAxes_IsTheSame()
    {
        var random = new Random(4);
        var (x, y) = (Enumerable.Range(0, 300).Select(_ => random.NextDouble()).ToArray(), Enumerable.Range(0, 300).Select(_ => random.NextDouble()).ToArray());
        var (c, s) = (Math.Cos(0.7), Math.Sin(0.7));

        var before = Resultant.Of([Component(x), Component(y)]).History!.Values.ToArray();
        var after = Resultant.Of([Component(x.Zip(y, (a, b) => (c * a) - (s * b)).ToArray()), Component(x.Zip(y, (a, b) => (s * a) + (c * b)).ToArray())]).History!.Values.ToArray();

        Assert.All(Enumerable.Range(0, 300), i => Assert.Equal(before[i], after[i], 1e-14));
    }

    [Fact]
    public void Of_OtherStart_IsAbsentWithBothStarts() => Assert.Equal(
        "11HEAD0000H3ACXP and 11HEAD0000H3ACXP start at 0 s and -0.01 s", Resultant.Of([Component([1]), Component([1]) with { RecordStartS = -0.01 }]).Absent);

    [Fact]
    public void Of_OtherInterval_IsAbsent() => Assert.Contains(
        "0.0001 s and 5E-05 s apart", Resultant.Of([Component([1]), Component([1]) with { History = new(0, 5e-5, new double[] { 1 }) }]).Absent, StringComparison.Ordinal);

    private static ReducedChannel Component(double[] values) => new()
    {
        Code = "11HEAD0000H3ACXP",
        Unit = "g",
        FilterClass = 1000,
        History = new(0, 1e-4, values),
        Bias = null,
    };
}
