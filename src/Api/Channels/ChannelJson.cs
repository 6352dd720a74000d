using Toepan.Api.Measures;
using Toepan.Domain.Packages;

namespace Toepan.Api.Channels;

/// <summary>A channel of the index as the contract writes it; times in s.</summary>
public sealed record ChannelJson(
    int Number, string Code, string File, string RecordedUnit, string? Unit, double? Start, double? Interval, int Count, int? RecordedClass,
    string? Unfit, double? UnfitFrom, IReadOnlyList<Problem> Problems)
{
    public static ChannelJson Of(ChannelIndexEntry entry) => new(
        entry.Number, entry.Code, entry.File, entry.RecordedUnit, entry.Unit, entry.StartS, entry.IntervalS, entry.Count, entry.RecordedClass,
        entry.Unfit, entry.UnfitFromS, entry.Problems);
}

/// <summary>Samples as the contract writes them; times in s. <c>times</c> is given only where points were reduced; a missing sample is null.</summary>
public sealed record SamplesJson(
    string Code, string Unit, int? Cfc, BiasJson? BiasRemoved, double From, double To, double Interval, double Start, int Count,
    IReadOnlyList<double>? Times, IReadOnlyList<double?> Values)
{
    public static SamplesJson Of(ChannelSamples samples) => new(
        samples.Code, samples.Unit, samples.Cfc, samples.BiasRemoved is { } bias ? BiasJson.Of(bias) : null, samples.FromS, samples.ToS,
        samples.IntervalS, samples.StartS, samples.Count, samples.Times,
        [.. samples.Values.Select(value => double.IsFinite(value) ? value : (double?)null)]);
}
