using Toepan.Domain.Ratings;

namespace Toepan.Domain.Sheets;

/// <summary>Which vehicles stand beside a sheet's, and what is said of it.</summary>
public static class SheetPeersComposer
{
    /// <summary>
    /// The peers of a sheet among others: those of similar mass, itself left out. Null where the sheet has no level or no mass. Whoever calls decides which vehicles may be
    /// named: for a sheet that becomes public, only those that are public by then.
    /// </summary>
    public static SheetPeers? Compose(SheetDocument document, IEnumerable<SheetPeer> others)
    {
        if (document.Overall is not { } own || document.Vehicle.MassKg is not { } mass)
        {
            return null;
        }

        List<SheetPeer> similar =
        [
            .. others.Where(other => other.Key != document.Vehicle.Key && Math.Max(other.MassKg, mass) <= SheetPeers.GreatestMassRatio * Math.Min(other.MassKg, mass))
                .OrderBy(other => other.Overall).ThenBy(other => other.Name, StringComparer.Ordinal),
        ];
        var peers = new SheetPeers { Own = own, Others = similar, Figures = [.. Figures(own, similar)], Texts = [] };
        return peers with { Texts = [.. document.Texts.Select(text => Texts(peers, SheetTexts.Find(text.Language) ?? SheetTexts.English, text.Language))] };
    }

    private static IEnumerable<SheetFigure> Figures(ProtectionLevel own, List<SheetPeer> others)
    {
        yield return SheetFigures.Count("peers.count", others.Count);
        yield return new()
        {
            Name = "peers.share", Kind = SheetFigureKind.Constant, Value = SheetPeers.GreatestMassRatio - 1, Shown = [new("%", 0.01, 0, null)],
        };
        foreach (var level in Enum.GetValues<ProtectionLevel>())
        {
            yield return SheetFigures.Count($"peers.{level}", others.Count(other => other.Overall == level) + (own == level ? 1 : 0));
        }
    }

    private static SheetPeersText Texts(SheetPeers peers, SheetTexts texts, string language)
    {
        var writer = new SheetWriter(texts, peers.Figures, []);
        var key = peers.Others.Count switch { 0 => "peers.none", 1 => "peers.one", _ => "peers.some" };
        var levels = Enum.GetValues<ProtectionLevel>().Where(level => peers.Count(level) > 0).Select(level => Level(level, peers.Own, writer));
        return new(language, [writer.Say("peers", key)], writer.Say("peers.says", "peers.says", ("list", writer.List([.. levels]))));
    }

    private static SheetSentence Level(ProtectionLevel level, ProtectionLevel own, SheetWriter writer)
    {
        var said = writer.Say("level", "peers.dots", ("level", new SheetSentence("word", SheetTextComposer.Level(level, writer.Texts), [])), ("n", $"peers.{level}"));
        return level == own ? said with { Text = said.Text + writer.Texts["peers.this"] } : said;
    }
}
