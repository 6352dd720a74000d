using Toepan.Domain.Channels;
using Xunit;

namespace Toepan.Domain.Tests.Channels;

public sealed class PlotReductionTests
{
    [Fact]
    public void Indices_LongSignal_KeepsEveryBucketsExtremes()
    {
        var random = new Random(11);
        var values = Enumerable.Range(0, 10_007).Select(_ => random.NextDouble()).ToArray();

        var kept = PlotReduction.Indices(values, 400);

        Assert.InRange(kept.Length, 200, 400);
        Assert.Equal(kept.Order().Distinct(), kept);
        for (var bucket = 0; bucket < 200; bucket++)
        {
            var (from, to) = (bucket * values.Length / 200, (bucket + 1) * values.Length / 200);
            var inside = kept.Where(i => i >= from && i < to).Select(i => values[i]).ToList();
            Assert.Equal(values[from..to].Min(), inside.Min());
            Assert.Equal(values[from..to].Max(), inside.Max());
        }
    }

    [Fact]
    public void Indices_FewSamples_KeepsAll() => Assert.Equal([0, 1, 2], PlotReduction.Indices([3, 1, 2], 3));

    [Fact]
    public void Indices_NothingButGaps_KeepsOneABucket() => Assert.Equal([0, 5], PlotReduction.Indices(Enumerable.Repeat(double.NaN, 10).ToArray(), 4));
}
