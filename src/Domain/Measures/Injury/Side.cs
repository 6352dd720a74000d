namespace Toepan.Domain.Measures.Injury;

/// <summary>The dummy's own left or right: the word in measure codes, the letters in channel codes.</summary>
internal sealed record Side(string Word, string Code)
{
    public static Side Left { get; } = new("left", "LE");

    public static Side Right { get; } = new("right", "RI");

    public static IReadOnlyList<Side> Both { get; } = [Left, Right];
}
