using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Measures.Injury;

public sealed class RiskTests
{
    private static readonly string[] Regions = ["risk.head", "risk.neck", "risk.chest", "risk.thigh.right"];

    public static TheoryData<string, DummyType, double, double> Table => new()
    {
        // standards.md §16 case 8.
        { RiskFunctions.Head, DummyType.H3, 100, 0.00005964 },
        { RiskFunctions.Head, DummyType.H3, 250, 0.00453604 },
        { RiskFunctions.Head, DummyType.HF, 500, 0.04720152 },
        { RiskFunctions.Head, DummyType.H3, 700, 0.11162893 },
        { RiskFunctions.Head, DummyType.H3, 1000, 0.23089436 },
        { RiskFunctions.Chest, DummyType.H3, 20, 0.01335030 },
        { RiskFunctions.Chest, DummyType.HF, 20, 0.02429650 },
        { RiskFunctions.Chest, DummyType.H3, 42, 0.14734165 },
        { RiskFunctions.Chest, DummyType.HF, 42, 0.28971131 },
        { RiskFunctions.Chest, DummyType.H3, 52, 0.30033352 },
        { RiskFunctions.Chest, DummyType.HF, 52, 0.52548007 },
        { RiskFunctions.Chest, DummyType.H3, 63, 0.51296291 },
        { RiskFunctions.Chest, DummyType.HF, 63, 0.74786893 },
        { RiskFunctions.NeckNij, DummyType.H3, 0, 0.03816588 },
        { RiskFunctions.NeckNij, DummyType.HF, 0.5, 0.09599837 },
        { RiskFunctions.NeckNij, DummyType.H3, 1, 0.22130114 },
        { RiskFunctions.NeckForce, DummyType.H3, 2.62, 0.00856049 },
        { RiskFunctions.NeckForce, DummyType.HF, 2.62, 0.25339249 },
        { RiskFunctions.NeckForce, DummyType.H3, 3.3, 0.04160658 },
        { RiskFunctions.NeckForce, DummyType.HF, 3.3, 0.81502529 },
        { RiskFunctions.NeckForce, DummyType.H3, 4.17, 0.25526048 },
        { RiskFunctions.NeckForce, DummyType.HF, 4.17, 0.99153152 },
        { RiskFunctions.Thigh, DummyType.H3, 5, 0.03928255 },
        { RiskFunctions.Thigh, DummyType.HF, 5, 0.12074437 },
        { RiskFunctions.Thigh, DummyType.H3, 6.805, 0.09457408 },
        { RiskFunctions.Thigh, DummyType.HF, 6.805, 0.35202031 },
        { RiskFunctions.Thigh, DummyType.H3, 10, 0.35459540 },
        { RiskFunctions.Thigh, DummyType.HF, 10, 0.86105737 },
        { RiskFunctions.Plateau, DummyType.H3, 4, 0.08395381 },
        { RiskFunctions.Ankle, DummyType.H3, 4, 0.13101660 },
        { RiskFunctions.Shaft, DummyType.H3, 1.0, 0.28186341 },
    };

    [Theory]
    [MemberData(nameof(Table))]
    public void Evaluate_TabulatedLoad_MeetsCheckCase(string name, DummyType dummy, double load, double risk) =>
        Near.To(risk, RiskFunctions.Get(name, dummy).Evaluate(load), Near.EightDecimals);

    // standards.md §8.3: the loads of 25 % risk, to the digits printed there.
    [Theory]
    [InlineData(RiskFunctions.Plateau, 5.58, 0.005)]
    [InlineData(RiskFunctions.Shaft, 0.966, 0.0005)]
    [InlineData(RiskFunctions.Ankle, 5.18, 0.005)]
    public void Inverse_QuarterRisk_MeetsPublishedThreshold(string name, double load, double tolerance) =>
        Near.To(load, RiskFunctions.Get(name, DummyType.H3).Inverse(0.25), tolerance);

    [Fact]
    public void Inverse_OfEvaluate_IsTheLoad()
    {
        foreach (var function in RiskFunctions.All)
        {
            foreach (var probability in new[] { 0.05, 0.15, 0.35, 0.6, 0.95 })
            {
                Near.Relative(probability, function.Evaluate(function.Inverse(probability)), 1e-11);
            }

            Assert.Equal(0, function.Inverse(function.AtZero / 2));
            Assert.Equal(double.PositiveInfinity, function.Inverse(1));
        }
    }

    [Fact]
    public void Evaluate_GrowingLoad_NeverFalls()
    {
        foreach (var function in RiskFunctions.All)
        {
            var scale = function.Inverse(0.999) / 500;
            var risks = Enumerable.Range(0, 501).Select(i => function.Evaluate(i * scale)).ToList();
            Assert.Equal(risks.Order(), risks);
            Assert.Equal(function.AtZero, risks[0]);
            Assert.True(risks[^1] > 0.99);
        }
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Evaluate_NotALoad_Throws(double load) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => RiskFunctions.Get(RiskFunctions.Chest, DummyType.H3).Evaluate(load));

    [Fact]
    public void Find_LowerLegOfSmallWoman_IsNull()
    {
        Assert.Null(RiskFunctions.Find(RiskFunctions.Shaft, DummyType.HF));
        Assert.Throws<KeyNotFoundException>(() => RiskFunctions.Get(RiskFunctions.Ankle, DummyType.HF));
    }

    // The joint risk of 49 CFR-dummy loads, standards.md §16 case 8, without its lower leg: the four risks there, the small-woman rule.
    [Fact]
    public void Joint_WithoutLowerLeg_IsTheProductOfSurvivals()
    {
        var measures = Loaded().ReduceAll(DummyType.HF).ToDictionary(m => m.Code);

        var none = Regions.Aggregate(1.0, (p, code) => p * (1 - measures[code].Value!.Value));
        Near.Relative(1 - none, measures["risk.joint"].Value, 1e-11);
        Assert.True(measures["risk.thigh.right"].Value > measures["risk.thigh.left"].Value);
        Assert.Contains("without the lower leg", measures["risk.joint"].Detail, StringComparison.Ordinal);
    }

    // standards.md §16 case 8, joint: HIC15 300, Nij 0.3, 25 mm, femur 3 kN → 0.11212006; here with the average man's lower leg as a fifth factor.
    [Fact]
    public void Joint_OfCheckCase_TakesTheLowerLegAsFifthFactor()
    {
        double[] printed = [0.00906533, 0.06684093, 0.02593007, 0.01425767];
        double[] computed =
        [
            RiskFunctions.Get(RiskFunctions.Head, DummyType.H3).Evaluate(300),
            RiskFunctions.Get(RiskFunctions.NeckNij, DummyType.H3).Evaluate(0.3),
            RiskFunctions.Get(RiskFunctions.Chest, DummyType.H3).Evaluate(25),
            RiskFunctions.Get(RiskFunctions.Thigh, DummyType.H3).Evaluate(3),
        ];
        var measures = JointCase().ReduceAll().ToDictionary(m => m.Code);

        Assert.All(printed.Zip(computed), pair => Near.To(pair.First, pair.Second, Near.EightDecimals));
        Near.To(0.11212006, 1 - computed.Aggregate(1.0, (p, risk) => p * (1 - risk)), Near.EightDecimals);
        var leg = Math.Max(measures["risk.lowerleg.left"].Value!.Value, measures["risk.lowerleg.right"].Value!.Value);
        Near.To(1 - ((1 - 0.11212006) * (1 - leg)), measures["risk.joint"].Value, 2e-8);
    }

    [Fact]
    public void Neck_DriverIsTheLargestOfThree()
    {
        Assert.Equal("neck.tension", new FakeChannels(10_000).Neck(3, _ => 5000, _ => 0, _ => 0).Reduce("risk.neck").Detail);
        Assert.Equal("neck.compression", new FakeChannels(10_000).Neck(3, _ => -5000, _ => 0, _ => 0).Reduce("risk.neck").Detail);
        Assert.Equal("neck.nij", new FakeChannels(10_000).Neck(3, _ => 100, _ => 90, _ => 0).Reduce("risk.neck").Detail);
    }

    [Fact]
    public void Joint_RegionMissing_IsAbsentAndNamesIt()
    {
        var measures = Loaded().ReduceAll().ToDictionary(m => m.Code);

        Assert.Contains("risk.lowerleg.left", measures["risk.joint"].Absent, StringComparison.Ordinal);
        Assert.True(measures["risk.joint"].Bounds!.AtLeast > measures["risk.chest"].Value);
        Assert.Equal(1, measures["risk.joint"].Bounds!.AtMost);
    }

    private static FakeChannels Loaded()
    {
        var channels = new FakeChannels(10_000);
        return channels.Head(channels.Sample(201, t => 80 * Math.Sin(Math.PI * t / 0.02)))
            .Neck(201, _ => 1500, _ => 20, _ => -100)
            .With("CHST0000", "DSX", 201, _ => -30)
            .With("FEMRLE00", "FOZ", 201, _ => -2).With("FEMRRI00", "FOZ", 201, _ => -3);
    }

    private static FakeChannels JointCase()
    {
        // A square pulse of exactly HIC15 = 300: A^2.5 · 0.015; Nij 0.3 from flexion alone.
        var channels = new FakeChannels(10_000);
        return channels.Head(channels.Sample(151, _ => Math.Pow(300 / 0.015, 0.4)))
            .Neck(151, _ => 0, _ => 93, _ => 0)
            .With("CHST0000", "DSX", 151, _ => -25)
            .With("FEMRLE00", "FOZ", 151, _ => -3).With("FEMRRI00", "FOZ", 151, _ => -2)
            .Tibia("LEUP", 151, _ => 50, _ => 20, _ => -2000).Tibia("LELO", 151, _ => 30, _ => 0, _ => -2500)
            .Tibia("RIUP", 151, _ => 10, _ => 20, _ => -1000).Tibia("RILO", 151, _ => 30, _ => 0, _ => -1500);
    }
}
