using Toepan.Domain.Channels;
using Xunit;
using static Toepan.Domain.Tests.Channels.TestPackages;

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

    [Fact]
    public void Prepared_CutAndReduced_KeepsThePeakAtItsOwnTime()
    {
        var channel = Channel("11HEAD0000H3ACXP", "m/(s*s)", t => 9.80665 * (t is > 0 and < 0.1 ? -60 * Math.Sin(Math.PI * t / 0.1) : 0));

        var series = ChannelSeriesReader.Prepared(channel, [], 60, new(0, 0.2, 100)).Series!;

        Assert.Equal(("g", 60), (series.Unit, series.FilterClass));
        Assert.InRange(series.Values.Count, 50, 100);
        var at = Enumerable.Range(0, series.Values.Count).MinBy(i => series.Values[i]);
        Assert.Equal(0.05, series.Times![at], 1e-9);
        Assert.Equal((0.0, 0.2), (Math.Round(series.FromS, 9), Math.Round(series.ToS, 9)));
    }

    [Fact]
    public void AsRecorded_UnfitChannel_IsStillShown()
    {
        var channel = Channel("11HEAD0000H3ACXA", "furlong", _ => 7);

        var series = ChannelSeriesReader.AsRecorded(channel, new()).Series!;

        Assert.Equal(("furlong", 1000, 3601), (series.Unit, series.FilterClass, series.Values.Count));
        Assert.Null(series.Times);
        Assert.Contains("unknown unit", ChannelSeriesReader.Prepared(channel, [], null, new()).Absent, StringComparison.Ordinal);
        Assert.Contains("no samples", ChannelSeriesReader.AsRecorded(channel, new(5, 6)).Absent, StringComparison.Ordinal);
    }
}
