using Toepan.Domain.Measures;

namespace Toepan.Domain.Channels;

/// <summary>A stretch in which the transducer was at its stop: the true magnitude was at least the recorded one.</summary>
public readonly record struct ClippedStretch(double FromS, double ToS);

/// <summary>
/// One channel ready for a measure: selected, converted to working units, flags applied, bias removed, filtered over the whole record,
/// then cut to the evaluation window 0 ≤ t ≤ 0.300 s.
/// </summary>
public sealed record ReducedChannel
{
    public required string Code { get; init; }

    /// <summary>Working unit: g, kN, N·m, mm, deg, rad/s.</summary>
    public required string Unit { get; init; }

    /// <summary>Class it was filtered to, or null for unfiltered.</summary>
    public required int? FilterClass { get; init; }

    /// <summary>Samples in the evaluation window.</summary>
    public required TimeHistory History { get; init; }

    public required BiasRemoved? Bias { get; init; }

    /// <summary>Time of the record's first sample, s: components of one resultant must share it, however they are cut.</summary>
    public double RecordStartS { get; init; }

    /// <summary>Clipped stretches within the window; empty = none.</summary>
    public IReadOnlyList<ClippedStretch> Clipped { get; init; } = [];

    /// <summary>Usable only before this time (an engineer's flag); null = to the end of the window.</summary>
    public double? ReliableUntilS { get; init; }
}

/// <summary>The answer to "give me this channel at this class": a channel, or the reason there is none.</summary>
/// <param name="Channel">The channel; null when absent.</param>
/// <param name="Absent">Why there is no usable channel; null when there is.</param>
/// <param name="Present">Whether the package has such a channel at all. Present and absent = unfit, and nothing else may stand in for it.</param>
/// <param name="Partial">Where the channel is only reliable up to a time: the part before, for bounds; else null.</param>
public sealed record ChannelAnswer(ReducedChannel? Channel, string? Absent, bool Present, ReducedChannel? Partial = null);

/// <summary>Where measures get their channels from. Implemented by the Channels stage; a measure never sees a raw channel.</summary>
public interface IChannelSource
{
    /// <summary>
    /// The channel that answers the pattern, at a filter class (60, 180, 600, 1000), in the working unit of its dimension. Of several that
    /// differ only in the filter letter: the unfiltered one, else the highest class, else the lowest number.
    /// </summary>
    ChannelAnswer Find(ChannelPattern pattern, int filterClass);

    /// <summary>True where any channel of the package answers the pattern, fit or not.</summary>
    bool Has(ChannelPattern pattern);
}
