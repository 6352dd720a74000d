namespace Toepan.Domain.Ratings;

/// <summary>One edition of the rating rules, read from a data file: regions, risk functions by name, bounds, limits, structure bounds, caps, overall rule.</summary>
public sealed record Scheme
{
    /// <summary>Key with edition, e.g. <c>offset-frontal-1</c>.</summary>
    public required string Key { get; init; }

    /// <summary>Title, e.g. "Offset frontal, edition 1".</summary>
    public required string Title { get; init; }
}
