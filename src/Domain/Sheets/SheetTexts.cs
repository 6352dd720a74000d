using System.Text.Json;

namespace Toepan.Domain.Sheets;

/// <summary>The texts of sheets in one language: templates by key, figures bound by name in braces, and how numbers, days and units are written.</summary>
public sealed class SheetTexts
{
    private readonly IReadOnlyDictionary<string, string> templates;

    public SheetTexts(string language, IReadOnlyDictionary<string, string> templates)
    {
        (Language, this.templates) = (language, templates);
    }

    /// <summary>English, the language every other one falls back to.</summary>
    public static SheetTexts English { get; } = Load("en");

    /// <summary>Every language this build carries, English first.</summary>
    public static IReadOnlyList<SheetTexts> All { get; } = [English, Load("de")];

    /// <summary>Language tag.</summary>
    public string Language { get; }

    /// <summary><c>ltr</c> or <c>rtl</c>.</summary>
    public string Direction => this["direction"];

    /// <summary>Whether readers want inches and miles beside centimetres and kilometres.</summary>
    public bool BothUnits => this["units.both"] == "yes";

    public IEnumerable<string> Keys => templates.Keys;

    /// <summary>The template of a key.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public string this[string key] => templates.TryGetValue(key, out var found) ? found : throw new KeyNotFoundException($"No sheet text '{key}' in {Language}.");

    /// <summary>Whether a template exists.</summary>
    public bool Knows(string key) => templates.ContainsKey(key);

    /// <summary>The texts of a language, or null where this build has none.</summary>
    public static SheetTexts? Find(string language) => All.FirstOrDefault(texts => texts.Language == language);

    private static SheetTexts Load(string language)
    {
        var name = $"Sheets/Data/sheet.{language}.json";
        using var stream = typeof(SheetTexts).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"Resource {name} is missing.");
        var texts = JsonSerializer.Deserialize<Dictionary<string, string>>(stream) ?? throw new InvalidOperationException($"Resource {name} is empty.");
        return new SheetTexts(language, texts);
    }
}
