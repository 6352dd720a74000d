namespace Toepan.Domain.Sheets;

/// <summary>One thing that differs between a signed document and what would be composed now.</summary>
/// <param name="What">Name of the figure, or language and key of the text, e.g. <c>chest.deflection</c>, <c>en: because</c>.</param>
/// <param name="Before">As it was; null where it did not exist.</param>
/// <param name="After">As it is; null where it is gone.</param>
public sealed record SheetDifference(string What, string? Before, string? After)
{
    /// <summary>Figures first, then sentences; empty exactly where neither changed (the hash may still differ by a drawing or a name).</summary>
    public static IReadOnlyList<SheetDifference> Between(SheetDocument before, SheetDocument after) =>
        [.. Pairs(Figures(before), Figures(after)), .. Pairs(Sentences(before), Sentences(after))];

    private static Dictionary<string, string> Figures(SheetDocument document) => document.Figures.ToDictionary(
        figure => figure.Name,
        figure => figure.Text ?? FormattableString.Invariant($"{figure.Value} {figure.Unit}").TrimEnd());

    private static Dictionary<string, string> Sentences(SheetDocument document) => document.Texts
        .SelectMany(text => text.All().Select(sentence => (Name: $"{text.Language}: {sentence.Key}", sentence.Text)))
        .GroupBy(pair => pair.Name)
        .ToDictionary(group => group.Key, group => string.Join(" ", group.Select(pair => pair.Text)));

    private static IEnumerable<SheetDifference> Pairs(Dictionary<string, string> before, Dictionary<string, string> after) =>
        before.Keys.Union(after.Keys)
            .Select(name => new SheetDifference(name, before.GetValueOrDefault(name), after.GetValueOrDefault(name)))
            .Where(pair => pair.Before != pair.After);
}
