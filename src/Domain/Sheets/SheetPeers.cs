using Toepan.Domain.Ratings;

namespace Toepan.Domain.Sheets;

/// <summary>A vehicle beside which this one may stand.</summary>
/// <param name="Overall">Its overall level by the same scheme.</param>
/// <param name="MassKg">Kerb mass, kg.</param>
public sealed record SheetPeer(string Key, string Name, ProtectionLevel Overall, double MassKg);

/// <summary>
/// Where a vehicle stands among tested vehicles of similar mass: the heavier at most 1.10 times the lighter. Beyond that nothing is compared, and
/// within it nothing is ranked further than the level.
/// </summary>
public sealed record SheetPeers
{
    /// <summary>Greatest ratio of the heavier mass to the lighter one. Common practice, no source.</summary>
    public const double GreatestMassRatio = 1.10;

    /// <summary>This vehicle's level.</summary>
    public required ProtectionLevel Own { get; init; }

    /// <summary>The others, best level first, then by name.</summary>
    public required IReadOnlyList<SheetPeer> Others { get; init; }
    public required IReadOnlyList<SheetFigure> Figures { get; init; }

    /// <summary>In the languages of the document.</summary>
    public required IReadOnlyList<SheetPeersText> Texts { get; init; }

    /// <summary>The texts of a language, or the English ones.</summary>
    public SheetPeersText In(string language) => Texts.FirstOrDefault(text => text.Language == language) ?? Texts[0];

    /// <summary>How many vehicles have a level, this one included.</summary>
    public int Count(ProtectionLevel level) => Others.Count(other => other.Overall == level) + (Own == level ? 1 : 0);
}

/// <summary>The peers in words.</summary>
/// <param name="Alternative">What the dot plot says, for those who do not see it.</param>
public sealed record SheetPeersText(string Language, IReadOnlyList<SheetSentence> Sentences, SheetSentence Alternative);
