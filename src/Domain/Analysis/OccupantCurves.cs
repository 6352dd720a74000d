using Toepan.Domain.Channels;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Analysis;

/// <summary>The curves of one dummy that a laboratory looks at every day, filtered as the measures are (methods edition 1).</summary>
public sealed class OccupantCurves(Occupant occupant, IChannelSource channels)
{
    private readonly DummyConstants constants = DummyConstants.Of(occupant.Dummy);

    /// <summary>Every set, in reading order from head to foot.</summary>
    public IEnumerable<CurveSet> All() => [Head(), NeckForce(), NeckMoment(), Chest(), Belts(), Femurs(), TibiaIndices()];

    private CurveSet Head()
    {
        var set = new CurveCollector("head.resultant", occupant.Position, "g");
        set.Add("head", [.. "XYZ".Select(axis => Ask("HEAD0000", $"AC{axis}", 1000))], Resultant.Of);
        if (Ask("HEAD0000", "ACR", 1000) is { Present: true } recorded)
        {
            set.Add("recorded", [recorded]);
        }

        return set.Done();
    }

    private CurveSet NeckForce()
    {
        var set = new CurveCollector("neck.force", occupant.Position, "kN");
        set.Add("tension", [Ask("NECKUP00", "FOZ", 600)]);
        return set.Done();
    }

    private CurveSet NeckMoment()
    {
        var set = new CurveCollector("neck.moment", occupant.Position, "N·m");
        set.Add("flexion", [Ask("NECKUP00", "MOY", 600), Ask("NECKUP00", "FOX", 600)], parts => Combine(parts, v => v[0] - (constants.CondyleOffsetM * v[1] * 1000)));
        return set.Done();
    }

    private CurveSet Chest()
    {
        var set = new CurveCollector("chest.deflection", occupant.Position, "mm");
        var main = Ask("CHST0003", "DSX", constants.DeflectionClass);
        set.Add("deflection", [main.Present ? main : Ask("CHST0000", "DSX", constants.DeflectionClass)], parts => Combine(parts, v => -v[0]));
        return set.Done();
    }

    private CurveSet Belts()
    {
        var set = new CurveCollector("belt.force", occupant.Position, "kN");
        foreach (var (name, place) in new[] { ("shoulder", "03"), ("lap", "06") })
        {
            var answer = channels.Find(new ChannelPattern($"1{occupant.Position}SEBE??{place}??FO??"), 60);
            if (answer.Present)
            {
                set.Add(name, [answer]);
            }
        }

        return set.Done();
    }

    private CurveSet Femurs()
    {
        var set = new CurveCollector("femur.compression", occupant.Position, "kN");
        foreach (var (name, side) in new[] { ("left", "LE"), ("right", "RI") })
        {
            set.Add(name, [Ask($"FEMR{side}00", "FOZ", 600)], parts => Combine(parts, v => -v[0]));
        }

        return set.Done();
    }

    private CurveSet TibiaIndices()
    {
        var set = new CurveCollector("tibia.index", occupant.Position, "");
        foreach (var (side, end, name) in new[] { ("LE", "UP", "left upper"), ("LE", "LO", "left lower"), ("RI", "UP", "right upper"), ("RI", "LO", "right lower") })
        {
            set.Add(name, [Ask($"TIBI{side}{end}", "MOX", 600), Ask($"TIBI{side}{end}", "MOY", 600), Ask($"TIBI{side}{end}", "FOZ", 600)], parts => Combine(parts, Index));
        }

        return set.Done();
    }

    private double Index(ReadOnlySpan<double> v) => (Math.Sqrt((v[0] * v[0]) + (v[1] * v[1])) / constants.TibiaMomentNm) + (Math.Abs(v[2]) / constants.TibiaForceKn);

    private ChannelAnswer Ask(string location, string component, int filterClass) =>
        channels.Find(ChannelPattern.Dummy(occupant.Position, location, component), filterClass);

    private static ResultantAnswer Combine(IReadOnlyList<ReducedChannel> parts, SampleRule rule)
    {
        if (Resultant.Disagreement(parts) is { } reason)
        {
            return new(null, reason);
        }

        var values = new double[parts.Min(part => part.History.Count)];
        var at = new double[parts.Count];
        for (var i = 0; i < values.Length; i++)
        {
            for (var k = 0; k < at.Length; k++)
            {
                at[k] = parts[k].History.Values.Span[i];
            }

            values[i] = rule(at);
        }

        return new(new TimeHistory(parts[0].History.StartS, parts[0].History.IntervalS, values), null);
    }

    private delegate double SampleRule(ReadOnlySpan<double> values);
}
