using Toepan.Domain.Ratings;

namespace Toepan.Domain.Sheets;

/// <summary>One region of the body on a sheet.</summary>
/// <param name="Title">Plain name: "Head".</param>
/// <param name="Level">Its level; null = not rated.</param>
/// <param name="Sentence">What it means for people, in one sentence.</param>
public sealed record SheetRegion(string Title, ProtectionLevel? Level, string Sentence);

/// <summary>The composed sheet: what a car buyer reads, in reading order. Every figure in it is bound to a measure of one reduction.</summary>
public sealed record ConsumerSheet
{
    public required string Title { get; init; }

    /// <summary>What it applies to: years, class, twins.</summary>
    public required string AppliesTo { get; init; }
    public required ProtectionLevel? Level { get; init; }

    /// <summary>One sentence with the reason.</summary>
    public required string Because { get; init; }

    /// <summary>How far the structure came, in lengths a reader can feel.</summary>
    public required IReadOnlyList<string> Space { get; init; }
    public required IReadOnlyList<SheetRegion> Regions { get; init; }

    /// <summary>What inspection and film showed.</summary>
    public required IReadOnlyList<string> Inspection { get; init; }

    /// <summary>What this does not tell, and the cautions.</summary>
    public required IReadOnlyList<string> NotTold { get; init; }

    /// <summary>How it was done: run, scheme, edition, evidence.</summary>
    public required IReadOnlyList<string> Method { get; init; }

    /// <summary>Why the sheet may not be released as it stands, or null.</summary>
    public required string? NotForRelease { get; init; }
}
