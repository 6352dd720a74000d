using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Toepan.Domain.Measures;

/// <summary>
/// Writes docs/formulas.md from the compiler's documentation file. A type that computes measures explains them in its doc comment:
/// <c>summary</c>, then <c>formula</c>, <c>window</c>, <c>edges</c>, <c>sources</c>, <c>confidence</c>, <c>checks</c>, each one paragraph.
/// </summary>
public static partial class MeasureCatalogueWriter
{
    /// <summary>Paragraphs of an explanation, in the order of the page: tag of the doc comment, label on the page.</summary>
    public static IReadOnlyList<(string Tag, string Label)> Paragraphs { get; } =
    [
        ("formula", "Formula"), ("window", "Window"), ("edges", "Edge cases"), ("sources", "Source"), ("confidence", "Confidence"), ("checks", "Checked against"),
    ];

    private const string Preface = """
        # Formulas, edition {0}

        Every measure Toepan computes: what it is, how, from what, and how sure its source is. Generated from the doc comments of the code
        by `dotnet run docs/formulas.cs`; change the comment, not this page. Keys in brackets are in [sources.md](sources.md), where the confidence marks
        (C1, C2, M, M-low) are explained too. H3 is the average-man dummy, HF the small-woman one. Class is the channel frequency class. A limit is that of the
        default scheme: over it, a region is at best rated low.
        """;

    /// <summary>The whole page, lines ending in LF.</summary>
    /// <param name="documentation">The documentation file the compiler wrote beside this assembly.</param>
    /// <param name="limits">Limit of a measure in words, by code; see <see cref="MeasureCatalogueLimits"/>.</param>
    /// <exception cref="InvalidOperationException">A type that computes measures has no summary.</exception>
    public static string Write(Stream documentation, IReadOnlyDictionary<string, string> limits)
    {
        var members = XDocument.Load(documentation).Descendants("member").ToDictionary(member => (string)member.Attribute("name")!);
        var page = new StringBuilder();
        page.Append(Preface.ReplaceLineEndings("\n").Replace("{0}", MethodEdition.Current, StringComparison.Ordinal)).Append('\n');
        foreach (var family in MeasureCatalogue.Entries.GroupBy(entry => entry.Explains))
        {
            WriteFamily(page, family.Key, [.. family], members.GetValueOrDefault($"T:{family.Key.FullName}"), limits);
        }

        return page.ToString();
    }

    private static void WriteFamily(
        StringBuilder page, Type type, IReadOnlyList<MeasureEntry> entries, XElement? member, IReadOnlyDictionary<string, string> limits)
    {
        page.Append('\n').Append(MeasureCatalogueBook.Heading).Append(MeasureCatalogueBook.HeadingOf(type)).Append("\n\n");
        page.Append("| code | measure | unit | class | limit |\n|---|---|---|---|---|\n");
        foreach (var entry in entries)
        {
            var unit = entry.Unit.Length == 0 ? "–" : entry.Unit;
            page.Append(MeasureCatalogueBook.TableEdge)
                .Append('`').Append(entry.Code).Append("` | ").Append(entry.Title).Append(" | ").Append(unit).Append(" | ")
                .Append(entry.FilterClass).Append(" | ").Append(limits.GetValueOrDefault(entry.Code, "–")).Append(" |\n");
        }

        var summary = TextOf(member, "summary") ?? throw new InvalidOperationException($"{type.FullName} computes measures and has no summary.");
        page.Append('\n').Append(summary).Append('\n');
        foreach (var (tag, label) in Paragraphs)
        {
            if (TextOf(member, tag) is { } text)
            {
                page.Append("\n**").Append(label).Append(".** ").Append(text).Append('\n');
            }
        }

        page.Append('\n').Append(MeasureCatalogueBook.FilePrefix).Append('`').Append(entries[0].File).Append("`\n");
    }

    private static string? TextOf(XElement? member, string tag) =>
        member?.Element(tag) is { } element ? Blanks().Replace(string.Concat(element.Nodes().Select(TextOf)), " ").Trim() : null;

    private static string TextOf(XNode node) => node switch
    {
        XText text => text.Value,
        XElement { Name.LocalName: "c" } code => $"`{code.Value}`",
        XElement { Name.LocalName: "see" or "seealso" } see => $"`{((string?)see.Attribute("cref"))?.Split('(')[0].Split('.')[^1]}`",
        XElement other => string.Concat(other.Nodes().Select(TextOf)),
        _ => string.Empty,
    };

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
