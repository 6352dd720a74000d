using Toepan.Domain.Analysis.Signals;
using Toepan.Domain.Channels;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Signals;

/// <summary>Check cases of standards.md §12 (derived there from the formulas, which are from memory of the 2014 edition).</summary>
public sealed class SignalComparisonTests
{
    private const double Dt = 1e-4;
    private const int Count = 2000;
    private const double EndS = (Count - 1) * Dt;

    [Fact]
    public void Compare_IdenticalSignals_ScoreOne()
    {
        var scores = Compare(Pulse, Pulse);

        Assert.Equal((1.0, 1.0, 1.0, 1.0, 1.0, 1), (scores.Corridor, scores.Phase, scores.Magnitude, scores.Slope, scores.Overall, scores.Rank));
        Assert.Equal(Count, scores.Samples);
    }

    [Theory]
    [InlineData(0.20, 0.444444444444)]
    [InlineData(0.04, 1)]
    [InlineData(0.60, 0)]
    public void Compare_ConstantOffset_CorridorByFormula(double offset, double corridor)
    {
        var largest = History(Pulse).Values.ToArray().Max();
        var scores = Compare(Pulse, t => Pulse(t) + (largest * offset));

        Assert.Equal(corridor, scores.Corridor, 1e-9);
        Assert.Equal(1, scores.Phase);
        Assert.Equal(1, scores.Slope, 1e-9);
    }

    [Theory]
    [InlineData(0.05, 0.75)]
    [InlineData(-0.05, 0.75)]
    [InlineData(0.15, 0.25)]
    public void Compare_PureShift_PhaseByFormulaAndTheRestFull(double share, double phase)
    {
        var shift = share * Count * Dt;
        var scores = Compare(Pulse, t => Pulse(t - shift));

        Assert.Equal(phase, scores.Phase, 1e-9);
        Assert.Equal(shift, scores.ShiftS, 1e-9);
        Assert.Equal(1, scores.Magnitude, 1e-9);
        Assert.Equal(1, scores.Slope, 1e-9);
    }

    [Fact]
    public void Compare_TwiceTheSlope_SlopeByFormula()
    {
        // T = t, C = 2t: no shift correlates better, so e = |2 − 1|/1 = 1 and ES = 1 − 1/2.
        var scores = Compare(t => t, t => 2 * t);

        Assert.Equal((0.0, 0.5), (scores.ShiftS, scores.Slope));
    }

    [Fact]
    public void Compare_WeightsOfTheScores_AreFourTwoTwoTwo()
    {
        var scores = Compare(Pulse, t => (0.8 * Pulse(t - 0.003)) + Math.Sin(900 * t));

        Assert.Equal((0.4 * scores.Corridor) + (0.2 * (scores.Phase + scores.Magnitude + scores.Slope)), scores.Overall, 1e-11);
        Assert.InRange(scores.Overall, 0.1, 0.99);
    }

    [Theory]
    [InlineData(0.95, 1)]
    [InlineData(0.94, 2)]
    [InlineData(0.80, 3)]
    [InlineData(0.58, 4)]
    public void RankOf_Bounds_BelongToTheWorseRank(double overall, int rank) => Assert.Equal(rank, SignalComparison.RankOf(overall));

    [Fact]
    public void Compare_OtherInterval_IsAbsentWithBothIntervals()
    {
        var answer = SignalComparison.Compare(History(Pulse), new TimeHistory(0, 5e-5, new double[4000]), 0, EndS);

        Assert.Null(answer.Scores);
        Assert.Contains("5E-05", answer.Absent!.Replace("0.00005", "5E-05", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Compare_SilentReferenceOrTooFewSamples_IsAbsentWithTheReason()
    {
        Assert.Contains("zero", SignalComparison.Compare(History(_ => 0), History(Pulse), 0, EndS).Absent, StringComparison.Ordinal);
        Assert.Contains("11 common samples", SignalComparison.Compare(History(Pulse), History(Pulse), 0, 10 * Dt).Absent, StringComparison.Ordinal);
    }

    // A pulse with a shoulder, so that only one shift fits; at rest at both ends.
    private static double Pulse(double t) => Normal(t, 0.080, 40, 0.008) + Normal(t, 0.110, 15, 0.010);

    private static double Normal(double t, double at, double height, double width) => height * Math.Exp(-0.5 * Math.Pow((t - at) / width, 2));

    private static TimeHistory History(Func<double, double> value) => new(0, Dt, Enumerable.Range(0, Count).Select(i => value(i * Dt)).ToArray());

    private static SignalScores Compare(Func<double, double> reference, Func<double, double> compared) =>
        SignalComparison.Compare(History(reference), History(compared), 0, EndS).Scores!;
}
