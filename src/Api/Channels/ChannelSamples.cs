using Toepan.Domain.Measures;
using Toepan.Domain.Packages;

namespace Toepan.Api.Channels;

/// <summary>One channel in the index of a run.</summary>
/// <param name="Number">Number in the package.</param>
/// <param name="Code">ISO/TS 13499 code.</param>
/// <param name="File">Entry it came from.</param>
/// <param name="RecordedUnit">Unit as written.</param>
/// <param name="Unit">Working unit, or null where the recorded one is unknown.</param>
/// <param name="StartS">Time of the first sample, s.</param>
/// <param name="IntervalS">Sampling interval, s.</param>
/// <param name="Count">Number of samples.</param>
/// <param name="RecordedClass">Class it was recorded with, or null for unfiltered.</param>
/// <param name="Unfit">Why it cannot be used, or null.</param>
/// <param name="UnfitFromS">Unfit from this time on, or null.</param>
/// <param name="Problems">Quality problems.</param>
public sealed record ChannelIndexEntry(
    int Number, string Code, string File, string RecordedUnit, string? Unit, double? StartS, double? IntervalS, int Count,
    int? RecordedClass, string? Unfit, double? UnfitFromS, IReadOnlyList<Problem> Problems);

/// <summary>Which samples are wanted.</summary>
/// <param name="Cfc">60, 180, 600 or 1000; null = as recorded.</param>
/// <param name="FromS">From this time on, s; null = from the first sample.</param>
/// <param name="ToS">To this time, s, inclusive; null = to the last sample.</param>
/// <param name="Points">At most about this many points, keeping each stretch's least and greatest; null = all.</param>
public sealed record SampleQuery(int? Cfc = null, double? FromS = null, double? ToS = null, int? Points = null)
{
    public const int LeastPoints = 10;
    public const int MostPoints = 100_000;

    /// <summary>SAE J211-1 channel frequency classes served.</summary>
    public static IReadOnlyList<int> Classes { get; } = [60, 180, 600, 1000];
}

/// <summary>Samples of one channel in its working unit.</summary>
/// <param name="Code">Channel code.</param>
/// <param name="Unit">Unit of the values.</param>
/// <param name="Cfc">Class they are filtered to; null = as recorded.</param>
/// <param name="BiasRemoved">What was subtracted, or null.</param>
/// <param name="FromS">Time of the first sample given, s.</param>
/// <param name="ToS">Time of the last sample given, s.</param>
/// <param name="IntervalS">Sampling interval of the channel, s.</param>
/// <param name="StartS">Time of the channel's first sample, s.</param>
/// <param name="Count">Number of values given.</param>
/// <param name="Times">Time of each value where points were reduced; null = equally spaced from <paramref name="FromS"/>.</param>
/// <param name="Values">Values.</param>
public sealed record ChannelSamples(
    string Code, string Unit, int? Cfc, BiasRemoved? BiasRemoved, double FromS, double ToS, double IntervalS, double StartS, int Count,
    IReadOnlyList<double>? Times, IReadOnlyList<double> Values);
