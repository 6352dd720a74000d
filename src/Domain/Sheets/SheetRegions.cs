
namespace Toepan.Domain.Sheets;

/// <summary>Regions of the body for a reader: left and right stand as one, the worse of the two.</summary>
public static class SheetRegions
{
    private static readonly string[] Order = ["head", "neck", "chest", "thigh", "lowerleg"];

    /// <summary>The regions a sheet has always shown where the scheme rates them, then any other the scheme has.</summary>
    public static IReadOnlyList<SheetRegion> Of(SheetFacts facts, SheetTexts texts)
    {
        var rated = facts.Rating.Regions.Where(r => r.Position == facts.Rating.Position).Select(r => Plain(r.Region)).Distinct().ToList();
        var shown = rated.Count == 0 ? Order : Order.Where(rated.Contains).Concat(rated.Except(Order));
        return [.. shown.Select(name => Region(name, facts, texts))];
    }

    /// <summary>What a region is called; one the texts do not know by its own key.</summary>
    public static string Word(string name, SheetTexts texts) => texts.Knows($"region.{name}") ? texts.Say($"region.{name}") : name.Replace('-', ' ');

    /// <summary>The region's name without its side: thigh.left → thigh.</summary>
    public static string Plain(string region) => region.Split('.')[0];

    private static SheetRegion Region(string name, SheetFacts facts, SheetTexts texts)
    {
        var sides = facts.Rating.Regions.Where(r => r.Position == facts.Rating.Position && Plain(r.Region) == name).ToList();
        var word = Word(name, texts);
        var title = char.ToUpperInvariant(word[0]) + word[1..];
        if (sides.Count == 0 || sides.Any(side => side.Level is null))
        {
            return new SheetRegion(title, null, texts.Say("region.absent"));
        }

        var level = sides.Max(side => side.Level);
        var risk = sides.Max(side => side.Risk);
        return new SheetRegion(title, level, risk is { } p && texts.Knows($"injury.{name}") ? Risk(p, name, facts, texts) : texts.Say("region.loads"));
    }

    /// <summary>A count of one denominator, 100; below one, "fewer than 1".</summary>
    private static string Risk(double probability, string name, SheetFacts facts, SheetTexts texts)
    {
        var count = Math.Round(probability * 100, MidpointRounding.AwayFromZero);
        var size = texts.Say($"size.{facts.Rated.Dummy}");
        var injury = texts.Say($"injury.{name}");
        return count < 1
            ? texts.Say("region.risk.few", ("size", size), ("injury", injury))
            : texts.Say("region.risk", ("size", size), ("count", count), ("injury", injury));
    }
}
