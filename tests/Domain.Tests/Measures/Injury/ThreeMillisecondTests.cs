using Xunit;

namespace Toepan.Domain.Tests.Measures.Injury;

public sealed class ThreeMillisecondTests
{
    private static double HalfSine(double peak, double durationS, double t) =>
        t >= 0 && t <= durationS ? peak * Math.Sin(Math.PI * t / durationS) : 0;

    // A·cos(π·0.003/(2T)): standards.md §3 and §16 case 3. The chords of a 1 MHz grid lie within 1e-6 of the curve.
    [Theory]
    [InlineData(80, 0.050, 79.64495717)]
    [InlineData(90, 0.020, 87.51329284)]
    public void Reduce_HalfSine_MeetsClosedForm(double peak, double durationS, double level)
    {
        var channels = new FakeChannels(1_000_000);
        channels.Axes("PELV0000", channels.Sample((int)(durationS * 1e6) + 1, t => HalfSine(peak, durationS, t)));

        var measure = channels.Reduce("pelvis.a3ms");

        Near.Relative(level, measure.Value, 1e-7);
        Near.To(0.003, measure.ToS - measure.FromS, 1e-8);
    }

    // Cumulative, not in one piece (contiguous would be 30.61 g): standards.md §16 case 3.
    [Fact]
    public void Reduce_TwoPulses_AddsTheirTimes()
    {
        var channels = new FakeChannels(1_000_000);
        channels.Axes("CHST0000", channels.Sample(20_001, t => HalfSine(80, 0.004, t) + HalfSine(75, 0.004, t - 0.010)));

        Near.Relative(64.29695523, channels.Reduce("chest.a3ms").Value, 1e-6);
    }

    // A flat top of exactly 3 ms: 30 intervals at 10 kHz, whatever 0.003/0.0001 is in doubles.
    [Theory]
    [InlineData(31, 50)]
    [InlineData(41, 50)]
    public void Reduce_FlatTopOfThreeMilliseconds_IsItsLevel(int samples, double level)
    {
        var channels = new FakeChannels(10_000);
        channels.Axes("HEAD0000", [.. new double[100], .. Enumerable.Repeat(level, samples), .. new double[100]]);

        var measure = channels.Reduce("head.a3ms");

        Near.Relative(level, measure.Value, 1e-12);
        Near.To(0.0100, measure.FromS, 1e-9);
        Near.To(0.0100 + ((samples - 1) * 1e-4), measure.ToS, 1e-9);
    }

    // Trapezoid by hand: sides of one interval, top 2.9 ms; 3 ms are reached half-way down each side's interval.
    [Fact]
    public void Reduce_FlatTopShortByOneInterval_LiesOnTheSides()
    {
        var channels = new FakeChannels(10_000);
        channels.Axes("HEAD0000", [.. new double[50], .. Enumerable.Repeat(60.0, 30), .. new double[50]]);

        Near.Relative(30, channels.Reduce("head.a3ms").Value, 1e-12);
    }

    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    [InlineData(13)]
    public void Reduce_RandomSignal_EqualsBisection(int seed)
    {
        var random = new Random(seed);
        var channels = new FakeChannels(10_000);
        var signal = channels.Sample(900, t => (50 * Math.Sin(Math.PI * t / 0.09)) + (25 * random.NextDouble()));
        channels.Axes("HEAD0000", signal);

        Near.Relative(Bisect(signal.Select(Math.Abs).ToArray(), 1e-4), channels.Reduce("head.a3ms").Value, 1e-10);
    }

    [Fact]
    public void Reduce_RecordShorterThanThreeMilliseconds_IsAbsent()
    {
        var channels = new FakeChannels(10_000).Axes("HEAD0000", Enumerable.Repeat(5.0, 30).ToArray());

        Assert.Contains("too few samples", channels.Reduce("head.a3ms").Absent, StringComparison.Ordinal);
        Assert.Equal(5, new FakeChannels(10_000).Axes("HEAD0000", Enumerable.Repeat(5.0, 31).ToArray()).Reduce("head.a3ms").Value);
    }

    [Fact]
    public void Reduce_FootWithoutY_UsesXAndZAndSaysSo()
    {
        var channels = new FakeChannels(10_000).With("FOOTLE00", "ACX", 100, _ => 30).With("FOOTLE00", "ACZ", 100, _ => 40);

        var measure = channels.Reduce("foot.left.a3ms");

        Assert.Equal(50, measure.Value);
        Assert.Equal("of X and Z", measure.Detail);
        Assert.NotNull(channels.Unfit("FOOTLE00", "ACY").Reduce("foot.left.a3ms").Absent);
    }

    // The slow, obvious way: halve the level until the time above it is 3 ms.
    private static double Bisect(double[] a, double intervalS)
    {
        var (low, high) = (0.0, a.Max());
        for (var k = 0; k < 200; k++)
        {
            var level = (low + high) / 2;
            var time = 0.0;
            for (var i = 1; i < a.Length; i++)
            {
                var (x, y) = (Math.Min(a[i - 1], a[i]), Math.Max(a[i - 1], a[i]));
                time += x > level ? intervalS : y > level ? intervalS * (y - level) / (y - x) : 0;
            }

            (low, high) = time >= 0.003 ? (level, high) : (low, level);
        }

        return low;
    }
}
