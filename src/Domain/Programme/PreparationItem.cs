using System.Text.Json.Serialization;

namespace Toepan.Domain.Programme;

/// <summary>What a preparation item is recorded as.</summary>
[JsonConverter(typeof(JsonStringEnumConverter<PreparationKind>))]
public enum PreparationKind
{
    /// <summary>One number in the item's unit.</summary>
    Number,

    /// <summary>Words: a batch, a part number.</summary>
    Text,

    /// <summary>Times with a number each, a line for each reading: <c>2031-03-13T18:00 21.3</c>.</summary>
    Log,
}

/// <summary>Something recorded while a run is prepared; bounds are inclusive.</summary>
/// <param name="Item">Key, e.g. <c>ride-height-front-left</c>.</param>
/// <param name="Title">Name on screen.</param>
/// <param name="Group">Heading it stands under.</param>
/// <param name="Kind">What it is recorded as.</param>
/// <param name="Unit">Unit; empty for words.</param>
/// <param name="Required">Preparation cannot be signed off without it.</param>
/// <param name="Lower">Lower bound, or null.</param>
/// <param name="Upper">Upper bound, or null.</param>
/// <param name="Source">Where the bounds come from.</param>
public sealed record PreparationItem(
    string Item, string Title, string Group, PreparationKind Kind, string Unit, bool Required, decimal? Lower, decimal? Upper, string Source);

/// <summary>A preparation item with what was recorded, held against its bounds.</summary>
/// <param name="Item">The item.</param>
/// <param name="Recorded">What was written, or null.</param>
/// <param name="Reading">The number judged (of a log the one furthest out), or null.</param>
/// <param name="Margin">Distance from the reading to the nearer bound: negative = outside; null where there is no bound.</param>
/// <param name="Verdict">Within (also where no bound is set), outside or not recorded.</param>
public sealed record PreparationVerdict(PreparationItem Item, string? Recorded, decimal? Reading, decimal? Margin, Verdict Verdict);
