namespace Toepan.Domain.Channels;

/// <summary>A stretch of sample indices, both ends included; empty where <see cref="Last"/> is before <see cref="First"/>.</summary>
public readonly record struct SampleRange(int First, int Last)
{
    public int Count => Math.Max(0, Last - First + 1);
}

/// <summary>
/// Bounds in time turned into sample counts, with a tolerance of 1e-6 of an interval, then compared as integers: t₀ + i·dt in
/// doubles misses a bound by 1e-17 and would pick other samples (methods edition 1, settled readings).
/// </summary>
public static class SampleGrid
{
    /// <summary>Tolerance of every bound in time, in sampling intervals.</summary>
    public const double Tolerance = 1e-6;

    /// <summary>Start of the evaluation window, s.</summary>
    public const double WindowFromS = 0;

    /// <summary>End of the evaluation window, s (49 CFR 571.208 S4.11(a)).</summary>
    public const double WindowToS = 0.300;

    /// <summary>Samples with <paramref name="fromS"/> ≤ t ≤ <paramref name="toS"/>, of a record of <paramref name="count"/> samples.</summary>
    public static SampleRange Between(double startS, double intervalS, int count, double fromS, double toS)
    {
        var first = Math.Ceiling(((fromS - startS) / intervalS) - Tolerance);
        var last = Math.Floor(((toS - startS) / intervalS) + Tolerance);
        return new((int)Math.Clamp(first, 0, count), (int)Math.Clamp(last, -1, count - 1));
    }

    /// <inheritdoc cref="Between(double, double, int, double, double)"/>
    public static SampleRange Between(TimeHistory history, double fromS, double toS) =>
        Between(history.StartS, history.IntervalS, history.Count, fromS, toS);

    /// <summary>Most intervals that fit into a duration, the bound included: 15 ms at 10 kHz = 150.</summary>
    public static int Within(double durationS, double intervalS) => ToCount(Math.Floor((durationS / intervalS) + Tolerance));

    /// <summary>Fewest intervals that reach a duration: n·dt ≥ duration.</summary>
    public static int Reaching(double durationS, double intervalS) => ToCount(Math.Ceiling((durationS / intervalS) - Tolerance));

    private static int ToCount(double intervals) => (int)Math.Clamp(intervals, 0, int.MaxValue);
}
