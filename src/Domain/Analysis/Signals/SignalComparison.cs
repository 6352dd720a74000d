using Toepan.Domain.Channels;
using Toepan.Domain.Measures;

namespace Toepan.Domain.Analysis.Signals;

/// <summary>
/// Objective comparison of two signals by ISO/TS 18571: R = 0.4·Z + 0.2·EP + 0.2·EM + 0.2·ES. Written from memory of the 2014
/// edition; the edition of 2024 was not at hand. Both signals must be filtered alike and share their sampling interval; samples are
/// paired in order from the start of the window. Source: [iso18571] (contents C1, formulas M); checks: identical signals,
/// a constant offset, a pure shift, and time warping against a slow one.
/// </summary>
public static class SignalComparison
{
    public const string Standard = "ISO/TS 18571";

    /// <summary>What the scores rest on, to be shown beside them.</summary>
    public const string Edition = "2014 edition, written from memory; not checked against the 2024 edition";

    /// <summary>Fewest samples compared: two nine-point means and a tenth of the window need room.</summary>
    public const int MinSamples = 20;

    private const double CorridorWeight = 0.4;
    private const double OtherWeight = 0.2;
    private static readonly double[] RankAbove = [0.94, 0.80, 0.58];

    /// <param name="reference">The signal compared with.</param>
    /// <param name="compared">The signal judged, same unit.</param>
    /// <param name="fromS">Start of the window, s, inclusive.</param>
    /// <param name="toS">End of the window, s, inclusive; a record that ends before shortens it.</param>
    public static SignalAnswer Compare(TimeHistory reference, TimeHistory compared, double fromS, double toS)
    {
        if (Math.Abs(reference.IntervalS - compared.IntervalS) > SampleGrid.Tolerance * reference.IntervalS)
        {
            return new(null, $"sampled {Wording.Figure(reference.IntervalS)} s and {Wording.Figure(compared.IntervalS)} s apart");
        }

        var (first, second) = (SampleGrid.Between(reference, fromS, toS), SampleGrid.Between(compared, fromS, toS));
        var count = Math.Min(first.Count, second.Count);
        if (count < MinSamples)
        {
            return new(null, $"{Math.Max(0, count)} common samples; at least {MinSamples} are needed");
        }

        var t = reference.Values.Span.Slice(first.First, count);
        var c = compared.Values.Span.Slice(second.First, count);
        return Largest(t) > 0
            ? new(Score(t, c, reference.TimeAt(first.First), reference.IntervalS), null)
            : new(null, "the reference is zero throughout the window");
    }

    private static SignalScores Score(ReadOnlySpan<double> t, ReadOnlySpan<double> c, double fromS, double intervalS)
    {
        var corridor = CorridorScore.Of(t, c);
        var shift = PhaseScore.Shift(t, c);
        var phase = PhaseScore.Of(shift, t.Length);
        var length = t.Length - Math.Abs(shift);
        var shiftedT = t.Slice(Math.Max(0, -shift), length);
        var shiftedC = c.Slice(Math.Max(0, shift), length);
        var magnitude = MagnitudeScore.Of(shiftedT, shiftedC);
        var slope = SlopeScore.Of(shiftedT, shiftedC, intervalS);
        var overall = Digits.Round12((CorridorWeight * corridor) + (OtherWeight * phase) + (OtherWeight * magnitude) + (OtherWeight * slope));
        return new(
            fromS, fromS + ((t.Length - 1) * intervalS), t.Length, shift * intervalS, Digits.Round12(corridor), Digits.Round12(phase),
            Digits.Round12(magnitude), Digits.Round12(slope), overall, RankOf(overall));
    }

    /// <summary>1 for R above 0.94, 2 above 0.80, 3 above 0.58, else 4.</summary>
    public static int RankOf(double overall)
    {
        var rank = 1;
        while (rank <= RankAbove.Length && overall <= RankAbove[rank - 1])
        {
            rank++;
        }

        return rank;
    }

    /// <summary>max |x|.</summary>
    internal static double Largest(ReadOnlySpan<double> values)
    {
        var largest = 0.0;
        foreach (var value in values)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        return largest;
    }

    /// <summary>Σ|c − t| / Σ|t|; 0 for equal signals, +∞ for others where the reference is zero.</summary>
    internal static double RelativeDistance(ReadOnlySpan<double> t, ReadOnlySpan<double> c)
    {
        var (distance, size) = (0.0, 0.0);
        for (var i = 0; i < t.Length; i++)
        {
            distance += Math.Abs(c[i] - t[i]);
            size += Math.Abs(t[i]);
        }

        return distance == 0 ? 0 : distance / size;
    }
}
