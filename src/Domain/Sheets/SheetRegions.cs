
namespace Toepan.Domain.Sheets;

/// <summary>Regions of the body for a reader: left and right stand as one, the worse of the two.</summary>
public static class SheetRegions
{
    private static readonly string[] Order = ["head", "neck", "chest", "thigh", "lowerleg"];

    public static IReadOnlyList<SheetRegion> Of(SheetFacts facts, SheetTexts texts) => [.. Order.Select(name => Region(name, facts, texts))];

    /// <summary>The region's name without its side: thigh.left → thigh.</summary>
    public static string Plain(string region) => region.Split('.')[0];

    private static SheetRegion Region(string name, SheetFacts facts, SheetTexts texts)
    {
        var sides = facts.Rating.Regions.Where(r => r.Position == facts.Rating.Position && Plain(r.Region) == name).ToList();
        var word = texts.Say($"region.{name}");
        var title = char.ToUpperInvariant(word[0]) + word[1..];
        if (sides.Count == 0 || sides.Any(side => side.Level is null))
        {
            return new SheetRegion(title, null, texts.Say("region.absent"));
        }

        var level = sides.Max(side => side.Level);
        var risk = sides.Max(side => side.Risk);
        return new SheetRegion(title, level, risk is { } p ? Risk(p, name, facts, texts) : texts.Say("region.loads"));
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
