namespace Toepan.Domain.Channels;

/// <summary>Integrals of sampled signals by the trapezoid rule, summed in sample order. Reference: scipy <c>cumulative_trapezoid</c>.</summary>
public static class Integral
{
    /// <summary>
    /// The running integral: element i is <paramref name="initial"/> + ∫ from the first sample to sample i, in the unit of the values times s.
    /// Same count as the input; element 0 is <paramref name="initial"/>.
    /// </summary>
    public static double[] Cumulative(ReadOnlySpan<double> values, double intervalS, double initial = 0)
    {
        var integral = new double[values.Length];
        var sum = initial;
        for (var i = 0; i < values.Length; i++)
        {
            if (i > 0)
            {
                sum += intervalS * (values[i - 1] + values[i]) / 2;
            }

            integral[i] = sum;
        }

        return integral;
    }
}
