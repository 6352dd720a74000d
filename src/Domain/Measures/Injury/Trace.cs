using Toepan.Domain.Channels;

namespace Toepan.Domain.Measures.Injury;

/// <summary>What was taken out of a time history: a value with its window or instant, s, and what kind of maximum it was.</summary>
internal readonly record struct Reading(double Value, double? FromS, double? ToS, string? Detail = null);

/// <summary>
/// Takes a value out of a time history that never is negative; null where the history is too short for it. The value never falls when
/// the history grows anywhere, so that the same extraction from a lower bound of the history is a lower bound of the value.
/// </summary>
internal delegate Reading? Extraction(TimeHistory history);

/// <summary>The history a measure is taken from, sample by sample.</summary>
/// <param name="Value">Its value from the components; never negative.</param>
/// <param name="AtLeast">What the true value certainly reaches, given what is known of the components; 0 where nothing is.</param>
/// <param name="Exact">Whether clipping leaves the value as it is.</param>
internal sealed record Trace(Func<int, double> Value, Func<int, double> AtLeast, Func<int, bool> Exact)
{
    /// <summary>max(sign · x, 0) of one channel.</summary>
    public static Trace Signed(Component x, int sign) => new(
        i => Math.Max(sign * x[i], 0),
        i => Math.Max(sign * x[i], 0),
        i => !x.ClippedTowards(i, sign));

    /// <summary>|x| of one channel.</summary>
    public static Trace Magnitude(Component x) => new(i => Math.Abs(x[i]), i => Math.Abs(x[i]), x.Known);

    /// <summary>√(Σ xₖ²); the sum runs in the order given.</summary>
    public static Trace Resultant(IReadOnlyList<Component> axes)
    {
        return new(Length, Length, i => axes.All(axis => axis.Known(i)));

        double Length(int i)
        {
            var sum = 0.0;
            foreach (var axis in axes)
            {
                sum += axis[i] * axis[i];
            }

            return Math.Sqrt(sum);
        }
    }
}
