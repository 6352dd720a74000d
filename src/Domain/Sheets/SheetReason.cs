using Toepan.Domain.Ratings;

namespace Toepan.Domain.Sheets;

/// <summary>The one sentence that says why the overall level is what it is: a finding that capped it, the structure, or the worst regions of the body.</summary>
public static class SheetReason
{
    private const string CapPrefix = "cap.";

    public static string Of(SheetFacts facts, SheetTexts texts)
    {
        if (facts.Rating.Overall is null)
        {
            return texts.Say("because.notRated");
        }

        var overall = facts.Rating.Rules.LastOrDefault(rule => rule is { Fired: true, Changed: true, Region: null });
        if (overall is not null && Finding(overall.Rule, texts) is { } finding)
        {
            return texts.Say("because.finding", ("finding", char.ToLowerInvariant(finding[0]) + finding[1..]));
        }

        if (overall is not null && overall.Rule.Contains("structure", StringComparison.Ordinal))
        {
            return texts.Say("because.structure");
        }

        return facts.Rating.Overall == ProtectionLevel.High ? texts.Say("because.high") : Regions(facts, texts);
    }

    private static string? Finding(string rule, SheetTexts texts)
    {
        var kind = rule.StartsWith(CapPrefix, StringComparison.Ordinal) ? rule[CapPrefix.Length..].Split('.')[0] : null;
        return kind is not null && texts.Knows($"finding.{kind}") ? texts.Say($"finding.{kind}") : null;
    }

    private static string Regions(SheetFacts facts, SheetTexts texts)
    {
        var own = facts.Rating.Regions.Where(region => region.Position == facts.Rating.Position && region.Level is not null).ToList();
        var worst = own.Max(region => region.Level);
        var names = own.Where(region => region.Level == worst).Select(region => SheetRegions.Word(SheetRegions.Plain(region.Region), texts)).Distinct().ToList();
        var list = names.Count == 1 ? names[0] : string.Join(", ", names[..^1]) + texts.Say("and") + names[^1];
        return texts.Say("because.regions", ("regions", list));
    }
}
