using System.Text;

namespace Toepan.Domain.Sheets;

/// <summary>Templates of one language + figures → sentences with their spans. A wording of an editor stands for the standard text while the facts still lead to that one.</summary>
public sealed class SheetWriter
{
    private readonly Dictionary<string, SheetFigure> figures;
    private readonly IReadOnlyList<SheetWording> wordings;

    public SheetWriter(SheetTexts texts, IEnumerable<SheetFigure> figures, IEnumerable<SheetWording> wordings)
    {
        Texts = texts;
        this.figures = figures.ToDictionary(figure => figure.Name, StringComparer.Ordinal);
        this.wordings = [.. wordings.Where(wording => wording.Language == texts.Language)];
    }

    public SheetTexts Texts { get; }

    /// <summary>Whether a figure can be bound.</summary>
    public bool Has(params ReadOnlySpan<string> names)
    {
        foreach (var name in names)
        {
            if (!figures.ContainsKey(name))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The sentence of a place.</summary>
    /// <param name="key">Its place.</param>
    /// <param name="standard">Key of its standard text.</param>
    /// <param name="bindings">Short names in that text: a string (name of a figure), or a sentence that stands inside.</param>
    /// <exception cref="KeyNotFoundException">The standard text is missing, or binds what is not there.</exception>
    public SheetSentence Say(string key, string standard, params (string Name, object To)[] bindings)
    {
        var own = wordings.FirstOrDefault(wording => wording.Key == key && wording.Standard == standard && Fillable(wording.Template, bindings));
        return Fill(key, own?.Template ?? Texts[standard], bindings);
    }

    /// <summary>A word of the texts as something that stands inside a sentence.</summary>
    public SheetSentence Word(string key) => new(key, Texts[key], []);

    /// <summary>A list in words: a, b and c.</summary>
    public SheetSentence List(IReadOnlyList<SheetSentence> parts)
    {
        var template = string.Concat(parts.Select((_, i) => (i == 0 ? "" : i == parts.Count - 1 ? Texts["and"] : ", ") + $"{{{i}}}"));
        return Fill("list", template, [.. parts.Select((part, i) => (i.ToString(System.Globalization.CultureInfo.InvariantCulture), (object)part))]);
    }

    /// <summary>A figure alone as something that stands inside a sentence.</summary>
    public SheetSentence Figure(string name) => Fill(name, $"{{{name}}}", []);

    private SheetSentence Fill(string key, string template, (string Name, object To)[] bindings)
    {
        var (text, spans) = (new StringBuilder(), new List<SheetSpan>());
        foreach (var part in SheetTemplate.Parse(template, out _))
        {
            if (!part.Binds)
            {
                text.Append(part.Text);
                continue;
            }

            switch (Bound(part.Text, bindings) ?? throw new KeyNotFoundException($"Sheet text '{key}' ({Texts.Language}) binds '{part.Text}', which was not given."))
            {
                case SheetSentence inside:
                    spans.AddRange(inside.Spans.Select(span => span with { Start = span.Start + text.Length }));
                    text.Append(inside.Text);
                    break;
                case SheetFigure figure:
                    var written = SheetNumbers.Text(figure, Texts);
                    spans.Add(new(text.Length, written.Length, figure.Name));
                    text.Append(written);
                    break;
            }
        }

        return new(key, text.ToString(), spans);
    }

    private bool Fillable(string template, (string Name, object To)[] bindings) =>
        SheetTemplate.Names(template).All(name => Bound(name, bindings) is not null);

    private object? Bound(string name, (string Name, object To)[] bindings)
    {
        foreach (var (shortName, to) in bindings)
        {
            if (shortName == name)
            {
                return to is string figure ? figures.GetValueOrDefault(figure) : to;
            }
        }

        return figures.GetValueOrDefault(name);
    }
}
