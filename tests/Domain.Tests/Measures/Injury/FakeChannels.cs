using Toepan.Domain.Channels;
using Toepan.Domain.Measures;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Tests.Measures.Injury;

/// <summary>A package's channels as a test writes them down: already filtered, starting at t = 0, any filter class.</summary>
internal sealed class FakeChannels(double rateHz, int position = 1, string dummy = "H3") : IChannelSource
{
    private readonly List<(string Code, ChannelAnswer Answer)> channels = [];

    public double RateHz => rateHz;

    public double StartS { get; init; }

    /// <summary>Classes asked for, by code.</summary>
    public Dictionary<string, int> Asked { get; } = [];

    public FakeChannels With(string location, string component, IReadOnlyList<double> values, params ClippedStretch[] clipped)
    {
        var channel = Channel(location, component, values) with { Clipped = clipped };
        channels.Add((channel.Code, new(channel, null, Present: true)));
        return this;
    }

    public FakeChannels With(string location, string component, int count, Func<double, double> value) =>
        With(location, component, Sample(count, value));

    public FakeChannels Unfit(string location, string component, string reason = "flat")
    {
        var code = Code(location, component);
        channels.Add((code, new(null, $"{code}: {reason}", Present: true)));
        return this;
    }

    public FakeChannels UnfitFrom(string location, string component, double fromS, IReadOnlyList<double> values)
    {
        var part = Channel(location, component, values.Take((int)Math.Round(fromS * rateHz)).ToList()) with { ReliableUntilS = fromS };
        channels.Add((part.Code, new(null, $"{part.Code}: flagged unfit", Present: true, part)));
        return this;
    }

    public double[] Sample(int count, Func<double, double> value) => [.. Enumerable.Range(0, count).Select(i => value(i / rateHz))];

    public ChannelAnswer Find(ChannelPattern pattern, int filterClass)
    {
        foreach (var (code, answer) in channels)
        {
            if (pattern.Matches(code))
            {
                Asked[code] = filterClass;
                return answer with { Channel = answer.Channel is { } channel ? channel with { FilterClass = filterClass } : null };
            }
        }

        return new(null, $"no channel {pattern} in the package", Present: false);
    }

    public bool Has(ChannelPattern pattern) => channels.Any(channel => pattern.Matches(channel.Code));

    public Measure Reduce(string code, DummyType type = DummyType.H3, bool bothTibiaCells = true) =>
        ReduceAll(type, bothTibiaCells).Single(measure => measure.Code == code);

    public IReadOnlyList<Measure> ReduceAll(DummyType type = DummyType.H3, bool bothTibiaCells = true) =>
        OccupantMeasures.Reduce(new(new(position, "driver", type), this, bothTibiaCells));

    private string Code(string location, string component) => $"1{position}{location}{dummy}{component}0";

    private ReducedChannel Channel(string location, string component, IReadOnlyList<double> values) => new()
    {
        Code = Code(location, component),
        Unit = component[..2] switch { "AC" => "g", "FO" => "kN", "MO" => "N·m", _ => "mm" },
        FilterClass = null,
        History = new(StartS, 1 / rateHz, values.ToArray()),
        Bias = new(Code(location, component), 0.5, -0.05, -0.005),
        RecordStartS = StartS,
    };
}

/// <summary>Short ways to write the channels of one place.</summary>
internal static class FakePlaces
{
    /// <summary>Three accelerations, the signal on x.</summary>
    public static FakeChannels Head(this FakeChannels channels, IReadOnlyList<double> x) => channels.Axes("HEAD0000", x);

    public static FakeChannels Axes(this FakeChannels channels, string location, IReadOnlyList<double> x, IReadOnlyList<double>? y = null, IReadOnlyList<double>? z = null) =>
        channels.With(location, "ACX", x).With(location, "ACY", y ?? new double[x.Count]).With(location, "ACZ", z ?? new double[x.Count]);

    /// <summary>Upper neck cell: N and N·m, as the check cases give them.</summary>
    public static FakeChannels Neck(this FakeChannels channels, int count, Func<double, double> fzN, Func<double, double> myNm, Func<double, double> fxN) => channels
        .With("NECKUP00", "FOZ", count, t => fzN(t) / 1000)
        .With("NECKUP00", "FOX", count, t => fxN(t) / 1000)
        .With("NECKUP00", "MOY", count, myNm);

    /// <summary>One tibia cell: N·m and N, as the check cases give them.</summary>
    public static FakeChannels Tibia(this FakeChannels channels, string cell, int count, Func<double, double> mxNm, Func<double, double> myNm, Func<double, double> fzN) => channels
        .With($"TIBI{cell}", "MOX", count, mxNm)
        .With($"TIBI{cell}", "MOY", count, myNm)
        .With($"TIBI{cell}", "FOZ", count, t => fzN(t) / 1000);
}
