using Toepan.Domain.Measures;

namespace Toepan.Domain.Channels;

/// <summary>
/// The zero offset before contact: the mean of the samples with −0.050 ≤ t ≤ −0.005 s, where at least 10 ms of them exist
/// (n · dt ≥ 10 ms); else nothing is removed. Drift = |mean of the window's second half − mean of its first|.
/// </summary>
public static class BiasWindow
{
    public const double FromS = -0.050;
    public const double ToS = -0.005;

    /// <summary>Least stretch of samples from which an offset is taken, s.</summary>
    public const double LeastS = 0.010;

    /// <summary>The offset and drift of samples already in the working unit (· <paramref name="factor"/>), or null where the window is too short.</summary>
    public static (BiasRemoved Bias, double Drift)? Take(string channel, double startS, double intervalS, ReadOnlySpan<double> samples, double factor)
    {
        var range = SampleGrid.Between(startS, intervalS, samples.Length, FromS, ToS);
        if (range.Count == 0 || range.Count < SampleGrid.Reaching(LeastS, intervalS))
        {
            return null;
        }

        var window = samples.Slice(range.First, range.Count);
        var half = range.Count / 2;
        var drift = half == 0 ? 0 : Math.Abs(Mean(window[half..]) - Mean(window[..half])) * Math.Abs(factor);
        var bias = new BiasRemoved(
            channel, Mean(window) * factor, startS + (range.First * intervalS), startS + (range.Last * intervalS));
        return (bias, drift);
    }

    private static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value;
        }

        return sum / values.Length;
    }
}
