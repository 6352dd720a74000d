namespace Toepan.Domain.Sheets;

/// <summary>A piece of a template: plain text, or the name of a binding without its braces.</summary>
/// <param name="At">Where it begins in the template; of a binding, its opening brace.</param>
public readonly record struct TemplatePart(bool Binds, string Text, int At);

/// <summary>Splits a template into text and bindings: <c>The wheel moved {back}.</c></summary>
public static class SheetTemplate
{
    /// <summary>The parts, or the place of a brace without its partner (then <paramref name="brokenAt"/> is not null).</summary>
    public static IReadOnlyList<TemplatePart> Parse(string template, out int? brokenAt)
    {
        var parts = new List<TemplatePart>();
        for (var at = 0; at < template.Length;)
        {
            var brace = template.AsSpan(at).IndexOfAny('{', '}');
            var end = brace < 0 ? template.Length : at + brace;
            if (end > at)
            {
                parts.Add(new(false, template[at..end], at));
            }

            if (brace < 0)
            {
                break;
            }

            var close = template.AsSpan(end + 1).IndexOfAny('{', '}');
            if (template[end] == '}' || close < 0 || template[end + 1 + close] == '{')
            {
                brokenAt = end;
                return parts;
            }

            parts.Add(new(true, template[(end + 1)..(end + 1 + close)].Trim(), end));
            at = end + close + 2;
        }

        brokenAt = null;
        return parts;
    }

    /// <summary>Names bound by a whole template, each once.</summary>
    public static IReadOnlyList<string> Names(string template) =>
        [.. Parse(template, out _).Where(part => part.Binds).Select(part => part.Text).Distinct(StringComparer.Ordinal)];
}
