using Toepan.Domain.Ratings;

namespace Toepan.Domain.Sheets;

/// <summary>
/// One consumer sheet, frozen: everything that a page, a PDF, JSON, CSV or SVG of it needs, in every language this build carries, and nothing that has to
/// be looked up elsewhere. The same facts and wordings give the same document, byte for byte (<see cref="SheetDocumentJson"/>), on any machine and day: it
/// holds no time of its own making.
/// <para>
/// <b>What is signed</b> is <see cref="SheetDocumentJson.Hash"/>: everything except the four members that are filled later, by the release:
/// <see cref="Peers"/>, <see cref="Answer"/>, <see cref="Version"/> and <see cref="Banner"/>. Fill those with <c>document with { … }</c>; the hash stays.
/// Any other change, be it a figure, a wording or a twin, gives another hash.
/// </para>
/// <para>
/// <b>Every number in a text is traced</b>: a <see cref="SheetSentence"/> lists the spans of its text that come from a figure; the figure, by name in
/// <see cref="Figures"/>, says which measure it is, its stored value, and by what rounding the text was made of it. Digits outside spans do not occur.
/// </para>
/// </summary>
public sealed record SheetDocument
{
    /// <summary>The form of this document, raised when a member changes its meaning.</summary>
    public const int CurrentForm = 1;

    public int Form { get; init; } = CurrentForm;
    public required SheetVehicle Vehicle { get; init; }

    /// <summary>The run that rates the vehicle and gives every figure.</summary>
    public required string Test { get; init; }

    /// <summary>Every valid run of the vehicle by date; with two, both are shown and the lower one rates.</summary>
    public required IReadOnlyList<SheetRun> Runs { get; init; }

    /// <summary>Overall level; null = not rated, and then <see cref="NotForRelease"/> is set too.</summary>
    public required ProtectionLevel? Overall { get; init; }

    /// <summary>Why the sheet may not be released as it stands: <c>invalid</c> or <c>notRated</c>; null where it may.</summary>
    public required string? NotForRelease { get; init; }

    /// <summary>Where the measured points of the structure stood before and after; empty where none were aligned.</summary>
    public required IReadOnlyList<SheetPoint> Space { get; init; }

    /// <summary>Head, neck, chest, thigh, lowerleg, in this order; left and right stand as the worse of the two.</summary>
    public required IReadOnlyList<SheetRegion> Regions { get; init; }

    /// <summary>What film and inspection showed, concerns and severe findings only, the worst first.</summary>
    public required IReadOnlyList<SheetFinding> Findings { get; init; }

    /// <summary>Chance that a repeated run gives the same overall level; null where not known.</summary>
    public required SheetHolds? Holds { get; init; }
    public required SheetMethod Method { get; init; }

    /// <summary>Every figure a text binds or might bind, by name.</summary>
    public required IReadOnlyList<SheetFigure> Figures { get; init; }

    /// <summary>The composed texts, English first.</summary>
    public required IReadOnlyList<SheetText> Texts { get; init; }

    /// <summary>Vehicles of similar mass. Not signed: which of them may be named is known only at release.</summary>
    public SheetPeers? Peers { get; init; }

    /// <summary>What the manufacturer answered, if they agreed to its printing. Filled at release.</summary>
    public SheetAnswer? Answer { get; init; }

    /// <summary>Which version of the sheet this is. Filled at release.</summary>
    public SheetVersion? Version { get; init; }

    /// <summary>The mark of a sheet whose level changed, or that was withdrawn. Filled at release.</summary>
    public SheetBanner? Banner { get; init; }

    /// <summary>The texts of a language, or the English ones where this document has none in it.</summary>
    public SheetText In(string language) => Texts.FirstOrDefault(text => text.Language == language) ?? Texts[0];

    /// <summary>A figure by name, of the sheet itself or of its peers; null where there is none.</summary>
    public SheetFigure? Figure(string name) =>
        Figures.FirstOrDefault(figure => figure.Name == name) ?? Peers?.Figures.FirstOrDefault(figure => figure.Name == name);
}
