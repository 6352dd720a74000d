using Toepan.Domain.Ratings;

namespace Toepan.Domain.Sheets;

/// <summary>Regions of the body for a reader: left and right stand as one, the worse of the two.</summary>
public static class SheetRegions
{
    private static readonly string[] Order = ["head", "neck", "chest", "thigh", "lowerleg"];

    /// <summary>The region's name without its side: thigh.left → thigh.</summary>
    public static string Plain(string region) => region.Split('.')[0];

    /// <summary>The regions a sheet has always shown where the scheme rates them, then any other the scheme has.</summary>
    public static IReadOnlyList<SheetRegion> Of(SheetFacts facts)
    {
        var rated = facts.Rating.Regions.Where(r => r.Position == facts.Rating.Position).Select(r => Plain(r.Region)).Distinct().ToList();
        var shown = rated.Count == 0 ? Order : Order.Where(rated.Contains).Concat(rated.Except(Order));
        return [.. shown.Select(name => Region(name, facts))];
    }

    /// <summary>The side whose risk is the larger one, or null where the region is not rated on a risk.</summary>
    public static RegionRating? Worse(string name, SheetFacts facts) => facts.Sides(name).Where(side => side.Risk is not null).MaxBy(side => side.Risk);

    /// <summary>What a region is called; one the texts do not know by its own key.</summary>
    public static string Word(string name, SheetTexts texts) => texts.Knows($"region.{name}") ? texts[$"region.{name}"] : name.Replace('-', ' ');

    private static SheetRegion Region(string name, SheetFacts facts)
    {
        var sides = facts.Sides(name);
        if (sides.Count == 0 || sides.Any(side => side.Level is null))
        {
            return new(name, null, null, null, null);
        }

        var worse = Worse(name, facts);
        var range = worse is null ? null : facts.Ranges.FirstOrDefault(range => range.Region == worse.Region);
        return new(name, sides.Max(side => side.Level), worse?.Risk, range?.From, range?.To);
    }
}
