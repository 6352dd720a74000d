namespace Toepan.Domain.Sheets;

/// <summary>A part of a sentence's text that was made from a figure.</summary>
/// <param name="Start">First character.</param>
/// <param name="Length">Number of characters (UTF-16).</param>
/// <param name="Figure">Name of the figure.</param>
public sealed record SheetSpan(int Start, int Length, string Figure);

/// <summary>A composed sentence.</summary>
/// <param name="Key">Its place on the sheet, e.g. <c>space.footwell</c>; what a wording of an editor is kept under.</param>
/// <param name="Text">The text.</param>
/// <param name="Spans">Where figures stand in it, in order, not overlapping.</param>
public sealed record SheetSentence(string Key, string Text, IReadOnlyList<SheetSpan> Spans)
{
    public override string ToString() => Text;
}

/// <summary>The texts of a sheet in one language, in reading order. Signed with the figures: what is printed is what was signed.</summary>
public sealed record SheetText
{
    /// <summary>Language tag: en, de.</summary>
    public required string Language { get; init; }

    /// <summary><c>ltr</c> or <c>rtl</c>.</summary>
    public required string Direction { get; init; }

    /// <summary>What it applies to: years, class, twins.</summary>
    public required IReadOnlyList<SheetSentence> Applies { get; init; }

    /// <summary>"Moderate protection".</summary>
    public required string Level { get; init; }

    /// <summary>"step 3 of 4"; null where not rated.</summary>
    public required SheetSentence? Step { get; init; }

    /// <summary>The one sentence that says why.</summary>
    public required SheetSentence Because { get; init; }

    /// <summary>How far the structure came.</summary>
    public required IReadOnlyList<SheetSentence> Space { get; init; }

    /// <summary>Words beside the points of the side view; the key is the point's label.</summary>
    public required IReadOnlyList<SheetSentence> SpaceLabels { get; init; }

    /// <summary>Whom the risks are about.</summary>
    public required IReadOnlyList<SheetSentence> People { get; init; }

    /// <summary>In the order of <see cref="SheetDocument.Regions"/>.</summary>
    public required IReadOnlyList<SheetRegionText> Regions { get; init; }

    /// <summary>What inspection and film showed.</summary>
    public required IReadOnlyList<SheetSentence> Inspection { get; init; }

    /// <summary>Would it come out the same? With both runs where there are two.</summary>
    public required IReadOnlyList<SheetSentence> Holds { get; init; }

    /// <summary>What the sheet does not tell, and the cautions.</summary>
    public required IReadOnlyList<SheetSentence> NotTold { get; init; }

    /// <summary>Run, mass, scheme, edition, evidence.</summary>
    public required IReadOnlyList<SheetSentence> Method { get; init; }

    /// <summary>Why it may not be released, or null.</summary>
    public required SheetSentence? NotForRelease { get; init; }

    /// <summary>Headings, captions and other words without figures, by key; sorted.</summary>
    public required IReadOnlyList<SheetLabel> Labels { get; init; }

    /// <summary>A label by key.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public string Label(string key) => Labels.FirstOrDefault(label => label.Key == key)?.Text ?? throw new KeyNotFoundException($"No sheet label '{key}' in {Language}.");

    /// <summary>Every composed sentence but the method's, in reading order.</summary>
    public IEnumerable<SheetSentence> BeforeMethod() =>
    [
        .. Applies, .. Step is null ? [] : new[] { Step }, Because, .. Space, .. SpaceLabels, .. People, .. Regions.Select(region => region.Sentence), .. Inspection,
        .. Holds, .. NotTold,
    ];

    /// <summary>Every composed sentence.</summary>
    public IEnumerable<SheetSentence> All() => [.. BeforeMethod(), .. Method, .. NotForRelease is null ? [] : new[] { NotForRelease }];
}

/// <summary>A word or phrase without figures.</summary>
public sealed record SheetLabel(string Key, string Text);

/// <summary>One region of the body in words.</summary>
/// <param name="Title">"Lower legs".</param>
/// <param name="Level">"Low protection".</param>
public sealed record SheetRegionText(string Region, string Title, string Level, SheetSentence Sentence);
