using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Measures.Injury;

/// <summary>
/// Against numpy 1.24.2 and scipy 1.10.1: 220 signals a measure, 120 to 899 samples, 10 and 20 kHz; 240 loads a risk function; relative
/// difference at most 1e-9.
/// </summary>
public sealed class InjuryReferenceTests
{
    private static readonly (string Code, string Name)[] Hic = [("head.hic15", "hic15"), ("head.hic36", "hic36")];

    [Fact]
    public void Head_RandomSignals_AgreesWithBruteForceAndRootFinding()
    {
        Assert.True(InjuryReference.Cases.Count >= 200);
        Assert.All(InjuryReference.Cases, one =>
        {
            var channels = new FakeChannels(one.RateHz).Axes("HEAD0000", one.X, one.Y, one.Z);
            var measures = channels.ReduceAll().ToDictionary(measure => measure.Code);
            foreach (var (code, name) in Hic)
            {
                var (value, first, last) = one.Window(name);
                Near.Relative(value, measures[code].Value);
                Near.To(first / one.RateHz, measures[code].FromS, 1e-9);
                Near.To(last / one.RateHz, measures[code].ToS, 1e-9);
            }

            Near.Relative(one.Of("a3ms"), measures["head.a3ms"].Value);
            Near.Relative(one.Of("peak"), measures["head.peak"].Value);
        });
    }

    [Theory]
    [InlineData(DummyType.H3)]
    [InlineData(DummyType.HF)]
    public void ChestNeckTibia_RandomSignals_AgreesWithNumpy(DummyType dummy)
    {
        Assert.All(InjuryReference.Cases, one =>
        {
            var channels = new FakeChannels(one.RateHz)
                .With("CHST0003", "DSX", one.X)
                .With("NECKUP00", "FOZ", Tenth(one.X)).With("NECKUP00", "FOX", Tenth(one.Y)).With("NECKUP00", "MOY", one.Z)
                .With("TIBIRILO", "MOX", one.X).With("TIBIRILO", "MOY", one.Y).With("TIBIRILO", "FOZ", one.Z);
            var measures = channels.ReduceAll(dummy).ToDictionary(measure => measure.Code);

            Near.Relative(one.Of($"viscous{dummy}"), measures["chest.viscous"].Value);
            Near.Relative(one.Of($"nij{dummy}"), measures["neck.nij"].Value);
            Near.Relative(one.Of($"index{dummy}"), measures["tibia.right.lower.index"].Value);
        });
    }

    [Fact]
    public void Evaluate_RandomLoads_AgreesWithScipy()
    {
        var curves = InjuryReference.Curves().ToList();

        Assert.Equal(RiskFunctions.All.Select(f => $"{f.Name} {f.Dummy}").Order(), curves.Select(c => $"{c.Name} {c.Dummy}").Order());
        Assert.All(curves, curve =>
        {
            Assert.True(curve.Loads.Length >= 200);
            var function = RiskFunctions.Get(curve.Name, Enum.Parse<DummyType>(curve.Dummy));
            Assert.All(curve.Loads.Zip(curve.Risks), pair => Near.Relative(pair.Second, function.Evaluate(pair.First)));
        });
    }

    private static double[] Tenth(double[] values) => Array.ConvertAll(values, value => value / 10);
}
