namespace Toepan.Domain.Channels.Quality;

/// <summary>Spike: one sample that steps away from both its neighbours, to the same side, by more than half of the channel's range.</summary>
public static class Spikes
{
    private const double StepOverRange = 0.5;

    /// <summary>Index of the first spike, or null; samples finite.</summary>
    public static int? First(ReadOnlySpan<double> samples)
    {
        if (samples.Length < 3)
        {
            return null;
        }

        var (min, max) = Extremes.Of(samples);
        var step = StepOverRange * (max - min);
        for (var i = 1; i < samples.Length - 1; i++)
        {
            var before = samples[i] - samples[i - 1];
            var after = samples[i] - samples[i + 1];
            if ((before > step && after > step) || (before < -step && after < -step))
            {
                return i;
            }
        }

        return null;
    }
}
