namespace Toepan.Domain.Channels;

/// <summary>Uniformly sampled signal: sample i is at StartS + i · IntervalS.</summary>
/// <param name="StartS">Time of the first sample, s from contact.</param>
/// <param name="IntervalS">Sampling interval, s, positive.</param>
/// <param name="Values">Samples in the unit the holder names.</param>
public sealed record TimeHistory(double StartS, double IntervalS, ReadOnlyMemory<double> Values)
{
    public int Count => Values.Length;

    /// <summary>Time of sample <paramref name="index"/>, s.</summary>
    public double TimeAt(int index) => StartS + (index * IntervalS);
}
