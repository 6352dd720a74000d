using System.Diagnostics;
using Toepan.Domain.Measures;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Measures.Injury;

public sealed class HeadInjuryCriterionTests
{
    // A fine grid brings the trapezoid within 1e-6 of the closed forms; the error falls with the square of the interval.
    private const double FineHz = 200_000;

    private static readonly Func<double, double, double, double> HalfSine = (a, d, t) => t <= d ? a * Math.Sin(Math.PI * t / d) : 0;
    private static readonly Func<double, double, double, double> Triangle = (a, d, t) => t <= d ? a * (1 - Math.Abs((2 * t / d) - 1)) : 0;
    private static readonly Func<double, double, double, double> Haversine = (a, d, t) => t <= d ? a * Math.Pow(Math.Sin(Math.PI * t / d), 2) : 0;
    private static readonly Func<double, double, double, double> Sawtooth = (a, d, t) => t <= d ? a * t / d : 0;

    private static Func<double, double, double, double> Shape(string name) => name switch
    {
        "half-sine" => HalfSine,
        "triangle" => Triangle,
        "haversine" => Haversine,
        "sawtooth" => Sawtooth,
        _ => throw new ArgumentOutOfRangeException(nameof(name)),
    };

    // Closed forms and numbers: standards.md §16 case 2; sawtooth §2 (0.24640066 A^2.5 T, the same as the triangle).
    [Theory]
    [InlineData("half-sine", 100, 0.010, 414.64564954, 414.64564954, 6.702297, 6.702297)]
    [InlineData("half-sine", 100, 0.020, 829.29129908, 829.29129908, 13.404593, 13.404593)]
    [InlineData("half-sine", 80, 0.030, 660.39538331, 712.07105967, 15, 20.106890)]
    [InlineData("half-sine", 60, 0.060, 392.11984493, 685.32554426, 15, 36)]
    [InlineData("triangle", 100, 0.020, 492.80131471, 492.80131471, 11.428571, 11.428571)]
    [InlineData("triangle", 80, 0.030, 418.28220139, 423.14389981, 15, 17.142857)]
    [InlineData("haversine", 100, 0.020, 605.87770992, 605.87770992, 10.151836, 10.151836)]
    [InlineData("haversine", 80, 0.030, 520.12858426, 520.23695824, 15, 15.227754)]
    [InlineData("sawtooth", 100, 0.020, 492.80131471, 492.80131471, 11.428571, 11.428571)]
    public void Reduce_PulseOfKnownForm_MeetsClosedForm(
        string shape, double peak, double durationS, double hic15, double hic36, double window15Ms, double window36Ms)
    {
        var channels = new FakeChannels(FineHz);
        channels.Head(channels.Sample((int)(durationS * FineHz) + 1, t => Shape(shape)(peak, durationS, t)));

        var short15 = channels.Reduce("head.hic15");
        var long36 = channels.Reduce("head.hic36");

        Near.Relative(hic15, short15.Value, 1e-6);
        Near.Relative(hic36, long36.Value, 1e-6);
        Near.To(window15Ms / 1000, short15.ToS - short15.FromS, 1.5 / FineHz);
        Near.To(window36Ms / 1000, long36.ToS - long36.FromS, 1.5 / FineHz);
    }

    // Square pulse: A^2.5 · min(T, W), exact on samples (standards.md §2 and §16 case 2).
    [Theory]
    [InlineData(0.010, 278.85480093, 278.85480093)]
    [InlineData(0.020, 418.28220139, 557.70960185)]
    [InlineData(0.050, 418.28220139, 1003.87728334)]
    public void Reduce_SquarePulse_MeetsClosedForm(double durationS, double hic15, double hic36)
    {
        var channels = new FakeChannels(10_000);
        channels.Head(channels.Sample((int)Math.Round(durationS * 10_000) + 1, _ => 60));

        var short15 = channels.Reduce("head.hic15");

        Near.To(hic15, short15.Value, Near.EightDecimals);
        Near.To(hic36, channels.Reduce("head.hic36").Value, Near.EightDecimals);
        Assert.Equal(0, short15.FromS);
        Near.To(Math.Min(durationS, 0.015), short15.ToS, 1e-12);
    }

    // standards.md §16 case 2, "Sampled": trapezoid, windows on samples.
    [Theory]
    [InlineData(10_000, 100, 0.020, 829.24856482, 829.24856482, 3.3, 16.7, 3.3, 16.7)]
    [InlineData(10_000, 80, 0.030, 660.38029580, 712.03823393, 7.5, 22.5, 4.9, 25.1)]
    [InlineData(20_000, 100, 0.020, 829.28053615, 829.28053615, 3.3, 16.7, 3.3, 16.7)]
    public void Reduce_SampledHalfSine_MeetsCheckCase(
        double rateHz, double peak, double durationS, double hic15, double hic36, double from15, double to15, double from36, double to36)
    {
        var channels = new FakeChannels(rateHz);
        channels.Head(channels.Sample((int)Math.Round(durationS * rateHz) + 1, t => HalfSine(peak, durationS, t)));

        Near.To(hic15, channels.Reduce("head.hic15").Value, Near.EightDecimals);
        Near.To(hic36, channels.Reduce("head.hic36").Value, Near.EightDecimals);
        if (rateHz < 20_000)
        {
            Near.To(from15 / 1000, channels.Reduce("head.hic15").FromS, 1e-9);
            Near.To(to15 / 1000, channels.Reduce("head.hic15").ToS, 1e-9);
            Near.To(from36 / 1000, channels.Reduce("head.hic36").FromS, 1e-9);
            Near.To(to36 / 1000, channels.Reduce("head.hic36").ToS, 1e-9);
        }
    }

    // standards.md §16, "3-axis case".
    [Fact]
    public void Reduce_ThreeAxes_MeetsCheckCase()
    {
        var channels = new FakeChannels(10_000);
        channels.Axes(
            "HEAD0000",
            channels.Sample(1501, t => t <= 0.1 ? 60 * Math.Sin(Math.PI * t / 0.1) : 0),
            channels.Sample(1501, t => t <= 0.1 ? 20 * Math.Sin(2 * Math.PI * t / 0.1) : 0),
            channels.Sample(1501, t => 30 * Math.Exp(-Math.Pow((t - 0.06) / 0.01, 2))));

        Near.To(65.70295698, channels.Reduce("head.peak").Value, Near.EightDecimals);
        Near.To(485.79484744, channels.Reduce("head.hic15").Value, Near.EightDecimals);
        Near.To(1025.40339019, channels.Reduce("head.hic36").Value, Near.EightDecimals);
        Near.To(65.38238742, channels.Reduce("head.a3ms").Value, Near.EightDecimals);
        Near.To(0.0497, channels.Reduce("head.hic15").FromS, 1e-9);
        Near.To(0.0647, channels.Reduce("head.hic15").ToS, 1e-9);
        Near.To(0.0331, channels.Reduce("head.hic36").FromS, 1e-9);
        Near.To(0.0691, channels.Reduce("head.hic36").ToS, 1e-9);
    }

    // The slow, obvious definition: every pair, one after another.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void Reduce_RandomSignal_EqualsSearchOverAllPairs(int seed)
    {
        var random = new Random(seed);
        var channels = new FakeChannels(10_000);
        var signal = channels.Sample(700, t => Math.Abs((40 * Math.Sin(Math.PI * t / 0.07)) + (15 * random.NextDouble())));
        channels.Head(signal);

        foreach (var (code, intervals) in new[] { ("head.hic15", 150), ("head.hic36", 360) })
        {
            var (value, first, last) = AllPairs(signal, 1e-4, intervals);
            var measure = channels.Reduce(code);
            Near.Relative(value, measure.Value, 1e-11);
            Near.To(first * 1e-4, measure.FromS, 1e-9);
            Near.To(last * 1e-4, measure.ToS, 1e-9);
        }
    }

    [Fact]
    public void Reduce_ConstantSignal_TakesEarliestPair()
    {
        var channels = new FakeChannels(10_000);
        channels.Head(channels.Sample(2001, _ => 47.3));

        Assert.Equal(0, channels.Reduce("head.hic15").FromS);
        Assert.Equal(0.015, channels.Reduce("head.hic15").ToS);
    }

    // 15 ms at 10 kHz is 150 intervals although 0.015 / 0.0001 is 149.99999999999997 in doubles.
    [Theory]
    [InlineData(10_000)]
    [InlineData(20_000)]
    [InlineData(12_500)]
    public void Reduce_WindowEqualToLimit_Counts(double rateHz)
    {
        var channels = new FakeChannels(rateHz);
        channels.Head(channels.Sample((int)(0.1 * rateHz), _ => 10));

        Near.To(0.036, channels.Reduce("head.hic36").ToS, 1.0 / rateHz * 0.999);
        Near.To(Math.Floor((0.015 * rateHz) + 1e-6) / rateHz, channels.Reduce("head.hic15").ToS, 1e-9);
    }

    [Fact]
    public void Reduce_TwoSamples_HasOnePair()
    {
        var channels = new FakeChannels(10_000).Head([10, 10]);

        Near.Relative(Math.Pow(10, 2.5) * 1e-4, channels.Reduce("head.hic15").Value, 1e-11);
        Assert.NotNull(new FakeChannels(10_000).Head([10]).Reduce("head.hic15").Absent);
    }

    // 300 ms at 20 kHz, both windows. Optimised code takes some 10 ms on one core of a small machine; the bound here holds for a debug
    // build on a busy one, and fails for a search that takes a root for each of the four million pairs twice over.
    [Fact]
    public void Reduce_LongRecord_IsFast()
    {
        var random = new Random(9);
        var channels = new FakeChannels(20_000);
        channels.Head(channels.Sample(6001, t => Math.Abs(HalfSine(70, 0.1, t)) + random.NextDouble()));
        var context = new OccupantContext(new(1, "driver", DummyType.H3), channels);

        var best = Enumerable.Range(0, 5).Min(_ =>
        {
            var watch = Stopwatch.StartNew();
            Assert.All(new HeadInjuryCriterion().Reduce(context), measure => Assert.NotNull(measure.Value));
            return watch.ElapsedMilliseconds;
        });

        Assert.True(best <= 250, $"both windows took {best} ms");
    }

    // Closed form of the half-sine, standards.md §16 case 2, sampled at 1 MHz: most window lengths are passed over by their bound.
    [Fact]
    public void Reduce_MegahertzRecord_MeetsClosedForm()
    {
        var channels = new FakeChannels(1_000_000);
        channels.Head(channels.Sample(60_001, t => t <= 0.020 ? HalfSine(100, 0.020, t) : 0));

        Near.Relative(829.29129908, channels.Reduce("head.hic15").Value, 1e-8);
    }

    private static (double Value, int First, int Last) AllPairs(double[] a, double intervalS, int longest)
    {
        var (value, first, last) = (0.0, 0, 0);
        for (var i = 0; i < a.Length; i++)
        {
            var integral = 0.0;
            for (var j = i + 1; j < a.Length && j - i <= longest; j++)
            {
                integral += (a[j] + a[j - 1]) / 2 * intervalS;
                var hic = (j - i) * intervalS * Math.Pow(integral / ((j - i) * intervalS), 2.5);
                if (hic > value)
                {
                    (value, first, last) = (hic, i, j);
                }
            }
        }

        return (value, first, last);
    }
}
