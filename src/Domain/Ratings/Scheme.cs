using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings;

/// <summary>One edition of the rating rules, read from a data file: regions, risk functions by name, bounds, limits, structure bounds, caps, overall rule.</summary>
public sealed record Scheme
{
    /// <summary>Key with edition, e.g. <c>offset-frontal-1</c>.</summary>
    public required string Key { get; init; }

    /// <summary>Title, e.g. "Offset frontal, edition 1".</summary>
    public required string Title { get; init; }

    public required int Edition { get; init; }

    /// <summary>Key of the procedure whose runs it rates.</summary>
    public required string Procedure { get; init; }

    /// <summary>Where the scheme as a whole comes from.</summary>
    public required string Source { get; init; }

    /// <summary>One rule for each region and dummy, in the order of the document.</summary>
    public required IReadOnlyList<RegionRule> Regions { get; init; }

    public required StructureRule Structure { get; init; }
    public required OverallRule Overall { get; init; }
    public required IReadOnlyList<CapRule> Caps { get; init; }
    public required RepeatabilityDefaults Repeatability { get; init; }

    /// <summary>Short names for sentences, by measure code.</summary>
    public required IReadOnlyDictionary<string, string> Words { get; init; }

    /// <summary>The rules for one dummy's regions.</summary>
    public IEnumerable<RegionRule> RegionsOf(DummyType dummy) => Regions.Where(rule => rule.Dummy == dummy);

    /// <summary>Short name of a measure, or its code.</summary>
    public string WordOf(string measure) => Words.TryGetValue(measure, out var word) ? word : measure;
}
