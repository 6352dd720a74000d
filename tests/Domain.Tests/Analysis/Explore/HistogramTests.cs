using Toepan.Domain.Analysis.Explore;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Explore;

public sealed class HistogramTests
{
    [Fact]
    public void Of_OneToHundred_HasBinsOfFreedmanDiaconisOnRoundNumbers()
    {
        // Closed form: quartiles of 1…100 (type 7) are 25.75 and 75.25, so the width is 2·49.5/∛100 = 21.3, widened to 50.
        var bins = Histogram.Of([.. Enumerable.Range(1, 100).Select(i => (double)i)]);

        Assert.Equal([(0.0, 50.0, 49), (50.0, 100.0, 50), (100.0, 150.0, 1)], bins.Select(bin => (bin.From, bin.To, bin.Count)));
    }

    [Fact]
    public void Of_AnyValues_CountsEachOnceInsideItsBin()
    {
        var random = new Random(7);
        for (var round = 0; round < 200; round++)
        {
            double[] values = [.. Enumerable.Range(0, random.Next(1, 400)).Select(_ => Math.Exp(random.NextDouble() * 9) - 40)];

            var bins = Histogram.Of(values);

            Assert.Equal(values.Length, bins.Sum(bin => bin.Count));
            Assert.All(bins, bin => Assert.Equal(bin.Count, values.Count(value => value >= bin.From - (1e-9 * bin.To) && value < bin.To)
                + (bins.Count == 1 && bin.From == bin.To ? values.Length : 0)));
            Assert.InRange(bins.Count, 1, Histogram.MostBins + 2);
        }
    }

    [Fact]
    public void Of_EqualValues_IsOneBin() => Assert.Equal([new HistogramBin(3, 3, 4)], Histogram.Of([3, 3, 3, 3]));

    [Fact]
    public void Of_Nothing_IsEmpty() => Assert.Empty(Histogram.Of([]));
}
