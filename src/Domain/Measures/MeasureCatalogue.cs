namespace Toepan.Domain.Measures;

/// <summary>
/// Every measure of edition 1: its words, its unit, and the code that computes it. The explanation itself stands once, in the doc
/// comment of that code; docs/formulas.md is generated from it and is what <see cref="Help"/> reads.
/// </summary>
public static class MeasureCatalogue
{
    private static readonly Dictionary<string, (MeasureEntry Entry, int Order)> ByCode =
        MeasureCatalogueEntries.All.Select((entry, order) => (entry, order)).ToDictionary(pair => pair.entry.Code, pair => pair, StringComparer.Ordinal);

    private static readonly Lazy<MeasureCatalogueBook> Book = new(MeasureCatalogueBook.Embedded);

    /// <summary>Every measure, in reading order.</summary>
    public static IReadOnlyList<MeasureEntry> Entries => MeasureCatalogueEntries.All;

    /// <summary>The entry of a measure's code, or null where edition 1 has none.</summary>
    public static MeasureEntry? Find(string code) => Located(code)?.Entry;

    /// <summary>The entry of a code that must be in the catalogue.</summary>
    /// <exception cref="KeyNotFoundException">It is not.</exception>
    public static MeasureEntry Get(string code) => Find(code) ?? throw new KeyNotFoundException($"No measure {code} in edition {MethodEdition.Current}.");

    /// <summary>The entry's title with the point or clearance it is about; a code the catalogue does not know stays a code.</summary>
    public static string Title(string code) => Find(code) is not { } entry ? code
        : entry.Code.Contains('<', StringComparison.Ordinal) ? $"{entry.Title}: {code.Split('.')[1].Replace('-', ' ')}"
        : entry.Title;

    /// <summary>Place in the catalogue, for listing measures in one order; codes not in it come last.</summary>
    public static int OrderOf(string code) => Located(code)?.Order ?? Entries.Count;

    /// <summary>The explanation behind a measure's figure, or null where edition 1 has no such measure.</summary>
    public static MeasureHelp? Help(string code) => Find(code) is { } entry ? Book.Value.Explain(entry) : null;

    private static (MeasureEntry Entry, int Order)? Located(string code) =>
        ByCode.TryGetValue(code, out var exact) || ByCode.TryGetValue(Pattern(code) ?? code, out exact) ? exact : null;

    // structure.<point>.rearward and clearance.<name>.residual.smaller: the name is whatever stands between the fixed ends.
    private static string? Pattern(string code) => NamedCodes
        .Where(pattern => code.StartsWith(pattern.Split('<')[0], StringComparison.Ordinal) && code.EndsWith(pattern.Split('>')[1], StringComparison.Ordinal))
        .MaxBy(pattern => pattern.Split('>')[1].Length);

    private static readonly List<string> NamedCodes = [.. ByCode.Keys.Where(code => code.Contains('<', StringComparison.Ordinal))];
}
