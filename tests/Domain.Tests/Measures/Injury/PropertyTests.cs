using Toepan.Domain.Measures;
using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Measures.Injury;

/// <summary>What must hold whatever the signal. Seeded; tolerances are those of rotating, scaling and adding some hundred doubles.</summary>
public sealed class PropertyTests
{
    private static double[] Noise(Random random, int count, double scale) =>
        [.. Enumerable.Range(0, count).Select(i => scale * ((2 * random.NextDouble()) - 1 - Math.Sin(Math.PI * i / count)))];

    private static FakeChannels Everything(int seed, double scale = 1, double startS = 0, int lead = 0, int position = 1)
    {
        var random = new Random(seed);
        var channels = new FakeChannels(10_000, position) { StartS = startS };
        foreach (var (location, component, range) in new[]
        {
            ("HEAD0000", "ACX", 60.0), ("HEAD0000", "ACY", 30), ("HEAD0000", "ACZ", 30), ("NECKUP00", "FOZ", 3), ("NECKUP00", "FOX", 1), ("NECKUP00", "MOY", 50),
            ("CHST0000", "ACX", 40), ("CHST0000", "ACY", 5), ("CHST0000", "ACZ", 9), ("CHST0003", "DSX", 30), ("PELV0000", "ACX", 50), ("PELV0000", "ACY", 5), ("PELV0000", "ACZ", 9),
            ("FEMRLE00", "FOZ", 3), ("FEMRRI00", "FOZ", 4), ("KNSLLE00", "DSX", 5), ("KNSLRI00", "DSX", 6),
            ("TIBILEUP", "MOX", 60), ("TIBILEUP", "MOY", 60), ("TIBILEUP", "FOZ", 2), ("TIBILELO", "MOX", 60), ("TIBILELO", "MOY", 60), ("TIBILELO", "FOZ", 2),
            ("TIBIRIUP", "MOX", 60), ("TIBIRIUP", "MOY", 60), ("TIBIRIUP", "FOZ", 2), ("TIBIRILO", "MOX", 60), ("TIBIRILO", "MOY", 60), ("TIBIRILO", "FOZ", 2),
            ("FOOTLE00", "ACX", 60), ("FOOTLE00", "ACZ", 60), ("FOOTRI00", "ACX", 60), ("FOOTRI00", "ACY", 60), ("FOOTRI00", "ACZ", 60),
        })
        {
            channels.With(location, component, [.. new double[lead], .. Noise(random, 500, range * scale)]);
        }

        return channels;
    }

    // How a measure grows when every channel is doubled: linear, but HIC by 2^2.5 and VC by 2².
    private static double Doubled(string code) => code switch
    {
        "head.hic15" or "head.hic36" => Math.Pow(2, 2.5),
        "chest.viscous" => 4,
        _ => 2,
    };

    [Theory]
    [InlineData(DummyType.H3)]
    [InlineData(DummyType.HF)]
    public void Reduce_ChannelsDoubled_ScalesByThePowerOfEachMeasure(DummyType dummy)
    {
        var once = Everything(1).ReduceAll(dummy);
        var twice = Everything(1, scale: 2).ReduceAll(dummy);

        Assert.All(once.Zip(twice).Where(pair => pair.First.Unit != "probability"), pair =>
            Near.Relative(Doubled(pair.First.Code) * pair.First.Value!.Value, pair.Second.Value, 2e-11));
    }

    [Theory]
    [InlineData(DummyType.H3)]
    [InlineData(DummyType.HF)]
    public void Reduce_LoadsDoubled_NoRiskFalls(DummyType dummy)
    {
        var once = Everything(2).ReduceAll(dummy);
        var twice = Everything(2, scale: 2).ReduceAll(dummy);

        var risks = once.Zip(twice).Where(pair => pair.First is { Unit: "probability", Absent: null }).ToList();
        Assert.Equal(dummy == DummyType.H3 ? 8 : 6, risks.Count);
        Assert.All(risks, pair => Assert.True(pair.Second.Value >= pair.First.Value, pair.First.Code));
    }

    [Fact]
    public void Reduce_SameSignalLater_MovesTheWindowAndNothingElse()
    {
        var now = Everything(3).ReduceAll();
        var later = Everything(3, startS: 0.0123).ReduceAll();

        Assert.All(now.Zip(later), pair =>
        {
            Assert.Equal(pair.First.Value, pair.Second.Value);
            Assert.Equal(pair.First.FromS is null, pair.Second.FromS is null);
            Near.To((pair.First.FromS ?? 0) + 0.0123, pair.Second.FromS ?? 0.0123, 1e-9);
        });
    }

    [Fact]
    public void Reduce_RotatedAxes_KeepsResultants()
    {
        var random = new Random(4);
        double[][] axes = [Noise(random, 800, 60), Noise(random, 800, 40), Noise(random, 800, 30)];
        var (a, b) = (0.7, -0.4);
        var x = axes[0].Zip(axes[1], (u, v) => (u * Math.Cos(a)) - (v * Math.Sin(a))).ToArray();
        var y = axes[0].Zip(axes[1], (u, v) => (u * Math.Sin(a)) + (v * Math.Cos(a))).ToArray();
        var y2 = y.Zip(axes[2], (u, v) => (u * Math.Cos(b)) - (v * Math.Sin(b))).ToArray();
        var z2 = y.Zip(axes[2], (u, v) => (u * Math.Sin(b)) + (v * Math.Cos(b))).ToArray();
        var straight = new FakeChannels(10_000).Axes("HEAD0000", axes[0], axes[1], axes[2]);
        var turned = new FakeChannels(10_000).Axes("HEAD0000", x, y2, z2);

        foreach (var code in new[] { "head.hic15", "head.hic36", "head.a3ms", "head.peak" })
        {
            Near.Relative(straight.Reduce(code).Value!.Value, turned.Reduce(code).Value, 2e-11);
            Near.To(straight.Reduce(code).FromS!.Value, turned.Reduce(code).FromS, 1e-9);
        }
    }

    [Fact]
    public void Reduce_TwoOccupants_EachReadsItsOwnSeat()
    {
        var third = Everything(5, position: 3);

        Assert.All(third.ReduceAll(), measure => Assert.Equal(3, measure.Position));
        Assert.All(third.ReduceAll(), measure => Assert.Null(measure.Absent));
        var first = Toepan.Domain.Measures.Injury.OccupantMeasures.Reduce(new(new(1, "driver", DummyType.H3), third));
        Assert.All(first, measure => Assert.NotNull(measure.Absent));
    }

    [Theory]
    [InlineData(DummyType.H3)]
    [InlineData(DummyType.HF)]
    public void Reduce_AnyOccupant_GivesTheSameCodesEachWithValueOrReason(DummyType dummy)
    {
        var full = Everything(6).ReduceAll(dummy);
        var empty = new FakeChannels(10_000).ReduceAll(dummy);

        Assert.Equal(full.Select(m => m.Code), empty.Select(m => m.Code));
        Assert.All(full.Concat(empty), m => Assert.True(m.Value is null != m.Absent is null, m.Code));
        Assert.All(full.Where(m => m.Value is not null), m =>
        {
            Assert.NotEmpty(m.Sources);
            Assert.NotEmpty(m.Bias);
            Assert.Equal(Digits.Round12(m.Value!.Value), m.Value);
            Assert.Equal(MethodEdition.Current, m.MethodEdition);
        });
        Assert.All(empty, m => Assert.False(string.IsNullOrWhiteSpace(m.Absent)));
    }
}
