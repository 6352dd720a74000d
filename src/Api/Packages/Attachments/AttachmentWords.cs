namespace Toepan.Api.Packages.Attachments;

/// <summary>Words of a request that name one of a few things.</summary>
internal static class AttachmentWords
{
    /// <summary>The member a word names, null where there is no word; the refusal where it names none.</summary>
    public static Failure? Read<T>(string what, string? word, out T? value)
        where T : struct, Enum
    {
        value = null;
        if (string.IsNullOrEmpty(word))
        {
            return null;
        }

        foreach (var member in Enum.GetValues<T>())
        {
            if (WordNaming.Instance.ConvertName(member.ToString()) == word)
            {
                value = member;
                return null;
            }
        }

        return Failure.BadRequest($"{what} is '{word}'; it is one of {string.Join(", ", Enum.GetNames<T>().Select(WordNaming.Instance.ConvertName))}.");
    }

    /// <summary>What is said of an attachment, from the words of a request.</summary>
    public static Outcome<AttachmentFacts> Facts(string? kind, string? moment, AttachmentFacts rest) =>
        (Read<AttachmentKind>("kind", kind, out var kindOf) ?? Read<CrashMoment>("moment", moment, out var when)) is { } refusal
            ? refusal
            : rest with { Kind = kindOf, Moment = Read<CrashMoment>("moment", moment, out when) is null ? when : null };
}
