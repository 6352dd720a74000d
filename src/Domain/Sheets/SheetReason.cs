using Toepan.Domain.Ratings;

namespace Toepan.Domain.Sheets;

/// <summary>The one sentence that says why the overall level is what it is: a finding that capped it, the structure, or the worst regions of the body.</summary>
internal static class SheetReason
{
    private const string Key = "because";
    private const string CapPrefix = "cap.";

    public static SheetSentence Of(SheetFacts facts, SheetWriter writer)
    {
        if (facts.Rating.Overall is null)
        {
            return writer.Say(Key, "because.notRated");
        }

        var overall = facts.Rating.Rules.LastOrDefault(rule => rule is { Fired: true, Changed: true, Region: null });
        if (overall is not null && Finding(overall.Rule, writer) is { } finding)
        {
            return writer.Say(Key, "because.finding", ("finding", finding));
        }

        if (overall is not null && overall.Rule.Contains("structure", StringComparison.Ordinal))
        {
            return writer.Say(Key, "because.structure");
        }

        return facts.Rating.Overall == ProtectionLevel.High ? writer.Say(Key, "because.high") : Regions(facts, writer);
    }

    private static SheetSentence? Finding(string rule, SheetWriter writer)
    {
        var key = rule.StartsWith(CapPrefix, StringComparison.Ordinal) ? $"finding.{rule[CapPrefix.Length..].Split('.')[0]}" : null;
        if (key is null || !writer.Texts.Knows(key))
        {
            return null;
        }

        var word = writer.Word(key);
        return writer.Texts["after.colon"] == "lower" ? word with { Text = char.ToLowerInvariant(word.Text[0]) + word.Text[1..] } : word;
    }

    private static SheetSentence Regions(SheetFacts facts, SheetWriter writer)
    {
        var own = facts.Rating.Regions.Where(region => region.Position == facts.Rating.Position && region.Level is not null).ToList();
        var worst = own.Max(region => region.Level);
        var names = own.Where(region => region.Level == worst).Select(region => SheetRegions.Word(SheetRegions.Plain(region.Region), writer.Texts)).Distinct();
        return writer.Say(Key, "because.regions", ("regions", writer.List([.. names.Select(name => new SheetSentence("region", name, []))])));
    }
}
