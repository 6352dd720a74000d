namespace Toepan.Domain.Channels.Quality;

/// <summary>
/// Clipped: at least 5 successive samples at an extreme that is the channel's amplitude class (within 1e-6 of it), or that the
/// channel repeats exactly. An extreme less than a tenth of the range away from the first sample is the rest level, not a stop.
/// The rest rule is our own reading (no source): without it every noise-free baseline would count as clipped.
/// </summary>
public static class Clipping
{
    public const int LeastSamples = 5;
    private const double ClassTolerance = 1e-6;
    private const double RestFraction = 0.1;

    /// <summary>Stretches in index order; samples finite, any unit, the amplitude class in the same unit.</summary>
    public static IReadOnlyList<SampleRange> Find(ReadOnlySpan<double> samples, double? amplitudeClass)
    {
        if (samples.Length < LeastSamples)
        {
            return [];
        }

        var (min, max) = Extremes.Of(samples);
        var found = new List<SampleRange>();
        if (max > min)
        {
            Collect(samples, +1, Stop(max, max - samples[0], max - min, amplitudeClass), found);
            Collect(samples, -1, Stop(-min, samples[0] - min, max - min, amplitudeClass), found);
        }

        return found.OrderBy(stretch => stretch.First).ToList();
    }

    // The level at and beyond which samples count as stopped, for an extreme turned positive; null = this side has no stop.
    private static double? Stop(double extreme, double awayFromRest, double range, double? amplitudeClass)
    {
        if (amplitudeClass is { } stop && stop > 0 && Math.Abs(extreme - stop) <= ClassTolerance * stop)
        {
            return stop * (1 - ClassTolerance);
        }

        return awayFromRest >= RestFraction * range ? extreme : null;
    }

    private static void Collect(ReadOnlySpan<double> samples, int sign, double? stop, List<SampleRange> found)
    {
        if (stop is not { } level)
        {
            return;
        }

        var from = -1;
        for (var i = 0; i <= samples.Length; i++)
        {
            if (i < samples.Length && sign * samples[i] >= level)
            {
                from = from < 0 ? i : from;
                continue;
            }

            if (from >= 0 && i - from >= LeastSamples)
            {
                found.Add(new(from, i - 1));
            }

            from = -1;
        }
    }
}
