using Toepan.Domain.Measures;
using Toepan.Domain.Packages;

namespace Toepan.Domain.Channels;

/// <summary>One recorded channel with everything decided about it but its filtering: fitness, unit, factor, offset, recorded class.</summary>
public sealed record PreparedChannel
{
    public required RecordedChannel Recorded { get; init; }

    /// <summary>The code taken apart; null where it has not 16 characters: such a channel answers no pattern.</summary>
    public required ChannelCode? Code { get; init; }

    /// <summary>Working unit, or null where the recorded one is unknown.</summary>
    public required string? Unit { get; init; }

    /// <summary>Recorded → working unit, an engineer's polarity and scale included.</summary>
    public required double Factor { get; init; }

    /// <summary>Class it was filtered to before we saw it; null = unfiltered.</summary>
    public required int? RecordedClass { get; init; }

    public required BiasRemoved? Bias { get; init; }

    /// <summary>Why it cannot be used at all, or null.</summary>
    public required string? Unfit { get; init; }

    /// <summary>Unfit from this time on, s (an engineer's flag), or null.</summary>
    public required double? UnfitFromS { get; init; }

    /// <summary>The engineer's words for <see cref="UnfitFromS"/>.</summary>
    public string? UnfitFromReason { get; init; }

    /// <summary>Clipped stretches of the whole record.</summary>
    public required IReadOnlyList<SampleRange> Clipped { get; init; }

    public required IReadOnlyList<Problem> Problems { get; init; }

    /// <summary>What the reduction keeps about it.</summary>
    public ChannelBelief Belief => new(Recorded.Code, Recorded.File, Unit, Unfit, UnfitFromS, RecordedClass, Bias, Problems);

    /// <summary>The first <paramref name="count"/> samples in the working unit, offset removed, unfiltered.</summary>
    public double[] Working(int count)
    {
        var recorded = Recorded.Samples.Span[..count];
        var working = new double[count];
        var bias = Bias?.Value ?? 0;
        for (var i = 0; i < count; i++)
        {
            working[i] = (recorded[i] * Factor) - bias;
        }

        return working;
    }
}
