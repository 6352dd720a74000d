using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Toepan.Domain.Sheets;

/// <summary>The sentences of a sheet in one language: templates by key, figures bound by name in braces.</summary>
public sealed class SheetTexts
{
    private readonly IReadOnlyDictionary<string, string> templates;

    private SheetTexts(IReadOnlyDictionary<string, string> templates, CultureInfo culture)
    {
        this.templates = templates;
        Culture = culture;
    }

    /// <summary>English, the language this build carries.</summary>
    public static SheetTexts English { get; } = Load("en");

    /// <summary>How figures and dates are written.</summary>
    public CultureInfo Culture { get; }

    /// <summary>The template of a key with its bindings filled.</summary>
    /// <exception cref="KeyNotFoundException">No such template, or a binding that was not given.</exception>
    public string Say(string key, params (string Name, object Value)[] bindings)
    {
        var template = templates.TryGetValue(key, out var found) ? found : throw new KeyNotFoundException($"No sheet text '{key}'.");
        var text = new StringBuilder();
        for (var at = 0; at < template.Length;)
        {
            var open = template.IndexOf('{', at);
            if (open < 0)
            {
                return text.Append(template, at, template.Length - at).ToString();
            }

            var close = template.IndexOf('}', open);
            text.Append(template, at, open - at).Append(Bound(template[(open + 1)..close], key, bindings));
            at = close + 1;
        }

        return text.ToString();
    }

    /// <summary>Whether a template exists.</summary>
    public bool Knows(string key) => templates.ContainsKey(key);

    private string Bound(string name, string key, (string Name, object Value)[] bindings)
    {
        var index = Array.FindIndex(bindings, binding => binding.Name == name);
        return index < 0
            ? throw new KeyNotFoundException($"Sheet text '{key}' binds '{name}', which was not given.")
            : string.Format(Culture, "{0}", bindings[index].Value);
    }

    private static SheetTexts Load(string language)
    {
        var name = $"Sheets/Data/sheet.{language}.json";
        using var stream = typeof(SheetTexts).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"Resource {name} is missing.");
        var texts = JsonSerializer.Deserialize<Dictionary<string, string>>(stream) ?? throw new InvalidOperationException($"Resource {name} is empty.");
        return new SheetTexts(texts, CultureInfo.GetCultureInfo(language == "en" ? "en-GB" : language));
    }
}
