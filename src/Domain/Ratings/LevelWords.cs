namespace Toepan.Domain.Ratings;

/// <summary>Levels in text. The word never stands alone: "low" reads as low risk.</summary>
public static class LevelWords
{
    /// <summary>Number of levels.</summary>
    public const int Steps = 4;

    /// <summary>How many of the four plates are filled: 4 for high, 1 for very low.</summary>
    public static int Step(this ProtectionLevel level) => Steps - (int)level;

    /// <summary>"moderate protection".</summary>
    public static string Protection(this ProtectionLevel level) => $"{level.Word()} protection";

    /// <summary>"moderate protection, step 3 of 4".</summary>
    public static string Full(this ProtectionLevel level) => $"{level.Protection()}, step {level.Step()} of {Steps}";

    /// <summary>The level of a word, or null.</summary>
    public static ProtectionLevel? Parse(string word) =>
        Enum.GetValues<ProtectionLevel>().Cast<ProtectionLevel?>().FirstOrDefault(level => level!.Value.Word() == word);
}
