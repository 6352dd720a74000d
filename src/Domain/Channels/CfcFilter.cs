namespace Toepan.Domain.Channels;

/// <summary>
/// Filtering to a channel frequency class, methods edition 1: the SAE J211-1 2-pole Butterworth section run forward and backward.
/// Both ends are extended by point reflection (2·x₀ − xₖ) over n = min(N − 1, round(0.010 s · fs)) samples; each pass starts
/// in the steady state of its first value. Reference: scipy <c>filtfilt(b, a, x, padtype='odd', padlen=n)</c>, agreed to 1e-9.
/// </summary>
public static class CfcFilter
{
    /// <summary>Length of each extension, s (ISO 6487 practice, from memory).</summary>
    public const double ExtensionS = 0.010;

    /// <summary>Samples below which no filtering is done.</summary>
    public const int MinSamples = 4;

    /// <summary>Sampling rate must be at least this many times the class ([j211-1], from a quotation).</summary>
    public const int MinRateOverClass = 10;

    /// <summary>Whether the sampling rate is at least 10 × the class, with the tolerance of <see cref="SampleGrid"/>.</summary>
    public static bool RateSuffices(double intervalS, int filterClass) =>
        MinRateOverClass * filterClass * intervalS <= 1 + SampleGrid.Tolerance;

    /// <summary>The filtered samples, same count and times; any unit.</summary>
    /// <exception cref="ArgumentException">Fewer than 4 samples, or a rate below 10 × the class: callers refuse such channels first.</exception>
    public static double[] Apply(ReadOnlySpan<double> samples, double intervalS, int filterClass)
    {
        if (samples.Length < MinSamples || !RateSuffices(intervalS, filterClass))
        {
            throw new ArgumentException("Too few samples, or sampled below ten times the class.", nameof(samples));
        }

        var extension = ExtensionCount(samples.Length, intervalS);
        var work = Extend(samples, extension);
        var section = CfcCoefficients.For(filterClass, intervalS);
        Pass(work, section);
        Array.Reverse(work);
        Pass(work, section);
        Array.Reverse(work);
        return work.AsSpan(extension, samples.Length).ToArray();
    }

    /// <summary>n = min(N − 1, round(0.010 · fs)), halves to even.</summary>
    public static int ExtensionCount(int count, double intervalS) =>
        (int)Math.Min(count - 1, Math.Round(ExtensionS / intervalS, MidpointRounding.ToEven));

    private static double[] Extend(ReadOnlySpan<double> samples, int extension)
    {
        var last = samples.Length - 1;
        var extended = new double[samples.Length + (2 * extension)];
        samples.CopyTo(extended.AsSpan(extension));
        for (var k = 1; k <= extension; k++)
        {
            extended[extension - k] = (2 * samples[0]) - samples[k];
            extended[extension + last + k] = (2 * samples[last]) - samples[last - k];
        }

        return extended;
    }

    // Transposed direct form II, in place; the two states start where a constant first value would have left them.
    private static void Pass(double[] x, CfcCoefficients c)
    {
        var z1 = (1 - c.A0) * x[0];
        var z2 = (c.A2 + c.B2) * x[0];
        for (var i = 0; i < x.Length; i++)
        {
            var input = x[i];
            var output = (c.A0 * input) + z1;
            z1 = (c.A1 * input) + (c.B1 * output) + z2;
            z2 = (c.A2 * input) + (c.B2 * output);
            x[i] = output;
        }
    }
}
