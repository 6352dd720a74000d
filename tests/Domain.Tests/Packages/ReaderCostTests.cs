using System.Globalization;
using System.Text;
using Toepan.Domain.Packages;
using Xunit;

namespace Toepan.Domain.Tests.Packages;

/// <summary>
/// What reading costs: an ordinary full package, and the most that a hostile one can ask for within the limits. Time is that of the processor, so
/// that a busy machine does not fail the test; nothing else runs beside it.
/// </summary>
[Collection(nameof(ReaderCostTests))]
[CollectionDefinition(nameof(ReaderCostTests), DisableParallelization = true)]
public sealed class ReaderCostTests
{
    private const long Megabyte = 1 << 20;

    [Fact]
    public void Read_HundredAndTwentyChannels_TakesSeconds()
    {
        var package = new SamplePackage().Without("Channel/FO-0042.chn");
        var random = new Random(1);
        for (var i = 1; i <= 120; i++)
        {
            var samples = string.Concat(Enumerable.Range(0, 20_000).Select(_ => ((random.NextDouble() - 0.5) * 200).ToString("F5", CultureInfo.InvariantCulture) + "\r\n"));
            package.With($"Channel/FO-0042.{i:D3}", SamplePackage.Channel("11HEAD0000H3ACXP", samples, count: 20_000));
        }

        var zip = package.Zip();
        var (reading, elapsed, _) = Measure(zip);
        Assert.Equal(120, reading.Package!.Channels.Count);
        Assert.All(reading.Package.Channels, channel => Assert.Equal(20_000, channel.Samples.Length));
        Assert.True(elapsed < TimeSpan.FromSeconds(4), $"{elapsed} (about half a second where optimised)");
    }

    [Fact]
    public void Read_MostSamplesTheLimitsAllow_StaysUnderHalfAGigabyte()
    {
        var samples = Encoding.ASCII.GetBytes(SamplePackage.Channel("11HEAD0000H3ACXP", "", count: 1_900_000) + Noise(1_900_000));
        var package = new SamplePackage().Without("Channel/FO-0042.chn");
        for (var i = 1; i <= 8; i++)
        {
            package.With($"Channel/FO-0042.{i:D3}", samples);
        }

        var (reading, elapsed, peak) = Measure(package.Zip());
        Assert.Equal(8 * 1_900_000, reading.Package!.Channels.Sum(channel => channel.Samples.Length));
        Assert.InRange(peak, 0, 500 * Megabyte);
        Assert.True(elapsed < TimeSpan.FromSeconds(10), $"{elapsed}");
    }

    [Fact]
    public void Read_MostHeaderLinesTheLimitsAllow_StaysUnderHalfAGigabyte()
    {
        var header = string.Concat(Enumerable.Range(0, 120).Select(i => $"Comments {i}:{new string('x', 40)}{i * 7919 % 1009}\n"));
        var package = new SamplePackage().Without("Channel/FO-0042.chn", "Channel/FO-0042.001", "Channel/FO-0042.002");
        for (var i = 1; i <= 1_900; i++)
        {
            package.With($"Channel/FO-0042.{i:D4}", header + i.ToString(CultureInfo.InvariantCulture) + "\n");
        }

        var (reading, elapsed, peak) = Measure(package.Zip());
        Assert.Equal(1_900, reading.Package!.Channels.Count);
        Assert.InRange(peak, 0, 500 * Megabyte);
        Assert.True(elapsed < TimeSpan.FromSeconds(10), $"{elapsed}");
    }

    // Peak of the live heap above what was there, sampled while reading.
    private static (PackageReading Reading, TimeSpan Elapsed, long PeakBytes) Measure(byte[] zip)
    {
        var before = GC.GetTotalMemory(forceFullCollection: true);
        long peak = 0;
        using var watcher = new Timer(_ => peak = Math.Max(peak, GC.GetTotalMemory(forceFullCollection: false)), null, 0, 20);
        var began = Environment.CpuUsage.TotalTime;
        var reading = SamplePackage.Read(zip);
        return (reading, Environment.CpuUsage.TotalTime - began, Math.Max(peak, GC.GetTotalMemory(forceFullCollection: false)) - before);
    }

    private static string Noise(int count)
    {
        var random = new Random(2);
        var text = new StringBuilder(count * 4);
        for (var i = 0; i < count; i++)
        {
            text.Append(random.Next(1_000)).Append('\n');
        }

        return text.ToString();
    }
}
