namespace Toepan.Api;

/// <summary>Text that people give with what they do.</summary>
internal static class Texts
{
    /// <summary>The refusal where a text is blank, too long or holds control characters other than line breaks and tabs; else null.</summary>
    /// <param name="what">What the text is, with its article, e.g. "A reason".</param>
    public static Failure? Check(string what, string? text, int longest)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return Failure.BadRequest($"{what} is needed, 1 to {longest} characters.");
        }

        if (text.Length > longest)
        {
            return Failure.BadRequest($"{what} has at most {longest} characters; this one has {text.Length}.");
        }

        return text.Any(character => char.IsControl(character) && character is not ('\n' or '\r' or '\t')) || StoredText.Clean(text) != text
            ? Failure.BadRequest($"{what} holds no control characters.")
            : null;
    }
}
