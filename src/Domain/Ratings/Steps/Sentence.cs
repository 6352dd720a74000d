namespace Toepan.Domain.Ratings.Steps;

internal static class Sentence
{
    /// <summary>First letter in upper case.</summary>
    public static string Start(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static string And(IReadOnlyList<string> parts) => Joined(parts, "and");

    public static string Or(IReadOnlyList<string> parts) => Joined(parts, "or");

    private static string Joined(IReadOnlyList<string> parts, string last) =>
        parts.Count < 2 ? string.Concat(parts) : $"{string.Join(", ", parts.Take(parts.Count - 1))} {last} {parts[^1]}";
}
