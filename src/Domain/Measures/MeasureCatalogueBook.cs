using System.Text;

namespace Toepan.Domain.Measures;

/// <summary>docs/formulas.md as a book that can be looked up: one section for each file that computes measures, headed by their codes.</summary>
public sealed class MeasureCatalogueBook
{
    /// <summary>Name of the embedded copy of docs/formulas.md.</summary>
    public const string ResourceName = "Toepan.Domain.docs.formulas.md";

    private readonly Dictionary<string, List<string>> sections = new(StringComparer.Ordinal);

    private MeasureCatalogueBook(IEnumerable<string> lines)
    {
        List<string>? section = null;
        foreach (var line in lines)
        {
            if (line.StartsWith(Heading, StringComparison.Ordinal))
            {
                sections.Add(line[Heading.Length..], section = []);
            }
            else if (line.Length > 0)
            {
                section?.Add(line);
            }
        }
    }

    internal const string Heading = "## ";
    internal const string FilePrefix = "File: ";
    internal const string TableEdge = "| ";

    /// <summary>The text of docs/formulas.md this assembly was built with.</summary>
    public static string EmbeddedText()
    {
        using var stream = typeof(MeasureCatalogueBook).Assembly.GetManifestResourceStream(ResourceName)
            ?? throw new InvalidOperationException($"The assembly holds no {ResourceName}.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    internal static MeasureCatalogueBook Embedded() => new(EmbeddedText().Split('\n').Select(line => line.TrimEnd('\r')));

    /// <summary>Heading of the section that explains a type's measures.</summary>
    internal static string HeadingOf(Type explains) => explains.Name;

    internal MeasureHelp? Explain(MeasureEntry entry)
    {
        if (!sections.TryGetValue(HeadingOf(entry.Explains), out var lines))
        {
            return null;
        }

        var paragraphs = lines.Where(line => !line.StartsWith('|') && !line.StartsWith(FilePrefix, StringComparison.Ordinal)).ToList();
        var notes = paragraphs.Skip(1).Select(Note).OfType<MeasureHelpNote>().ToList();
        return new(entry, paragraphs[0], notes, LimitOf(entry, lines));
    }

    // "**Label.** text"
    private static MeasureHelpNote? Note(string line)
    {
        var end = line.IndexOf(".** ", StringComparison.Ordinal);
        return line.StartsWith("**", StringComparison.Ordinal) && end > 0 ? new(line[2..end], line[(end + 4)..]) : null;
    }

    private static string? LimitOf(MeasureEntry entry, IEnumerable<string> lines)
    {
        var row = lines.FirstOrDefault(line => line.StartsWith($"{TableEdge}`{entry.Code}` |", StringComparison.Ordinal));
        var limit = row?.Split('|', StringSplitOptions.TrimEntries)[^2];
        return limit is null or "" or "–" ? null : limit;
    }
}
