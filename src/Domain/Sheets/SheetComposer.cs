
namespace Toepan.Domain.Sheets;

/// <summary>Facts → <see cref="ConsumerSheet"/>. Pure: the same facts and texts give the same sheet.</summary>
public static class SheetComposer
{
    private const double KilometresPerMile = 1.609344;
    private const double KilogramsPerPound = 0.45359237;

    public static ConsumerSheet Compose(SheetFacts facts, SheetTexts texts) => new()
    {
        Title = facts.Vehicle,
        AppliesTo = AppliesTo(facts, texts),
        Level = facts.Rating.Overall,
        Because = SheetReason.Of(facts, texts),
        Space = SheetSpace.Of(facts, texts),
        Regions = SheetRegions.Of(facts, texts),
        Inspection = Inspection(facts, texts),
        NotTold = [texts.Say("not.other"), texts.Say("not.mass"), texts.Say("not.population"), texts.Say("not.law")],
        Method = Method(facts, texts),
        NotForRelease = NotForRelease(facts, texts),
    };

    private static string AppliesTo(SheetFacts facts, SheetTexts texts)
    {
        var text = (facts.ModelYearFrom, facts.ModelYearTo) switch
        {
            ({ } from, { } to) when to > from => texts.Say("applies.years", ("from", Year(from)), ("to", Year(to)), ("class", facts.ClassTitle)),
            ({ } from, _) => texts.Say("applies.from", ("from", Year(from)), ("class", facts.ClassTitle)),
            _ => texts.Say("applies.class", ("class", facts.ClassTitle)),
        };
        return facts.Twins.Count == 0 ? text : $"{text} {texts.Say("applies.twins", ("twins", string.Join(", ", facts.Twins)))}";
    }

    private static string Year(int year) => year.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private static List<string> Inspection(SheetFacts facts, SheetTexts texts)
    {
        var sentences = facts.Findings
            .Where(finding => finding.Severity != Packages.FindingSeverity.Note && texts.Knows($"finding.{finding.Kind}"))
            .OrderByDescending(finding => finding.Severity)
            .Select(finding => texts.Say($"finding.{finding.Kind}"))
            .Distinct()
            .ToList();
        return sentences.Count > 0 ? sentences : [texts.Say("finding.none")];
    }

    private static List<string> Method(SheetFacts facts, SheetTexts texts)
    {
        var lines = new List<string>();
        var speed = facts.Conduct.Items.FirstOrDefault(item => item.Item == "impactSpeed")?.Reading;
        var overlap = facts.Conduct.Items.FirstOrDefault(item => item.Item == "overlap")?.Reading;
        lines.Add(texts.Say(
            "method.run",
            ("test", facts.Test),
            ("date", facts.Date.ToString("d MMMM yyyy", texts.Culture)),
            ("kmh", speed is { } kmh ? kmh.ToString("F1", texts.Culture) : "–"),
            ("mph", speed is { } v ? (v / (decimal)KilometresPerMile).ToString("F1", texts.Culture) : "–"),
            ("overlap", overlap is { } share ? share.ToString("F0", texts.Culture) : "–")));
        if (facts.TestMassKg is { } mass)
        {
            lines.Add(texts.Say("method.mass", ("kg", mass.ToString("F0", texts.Culture)), ("lb", (mass / (decimal)KilogramsPerPound).ToString("F0", texts.Culture))));
        }

        lines.Add(texts.Say("method.scheme", ("scheme", facts.Rating.Scheme), ("edition", facts.MethodEdition)));
        lines.Add(texts.Say("method.evidence", ("sha", facts.PackageSha256)));
        return lines;
    }

    private static string? NotForRelease(SheetFacts facts, SheetTexts texts)
    {
        if (!facts.Rating.Valid)
        {
            var items = facts.Conduct.Items.Where(item => item.Fails).Select(item => texts.Knows($"item.{item.Item}") ? texts.Say($"item.{item.Item}") : item.Item);
            return texts.Say("notForRelease.invalid", ("items", string.Join(", ", items)));
        }

        return facts.Rating.Overall is null ? texts.Say("notForRelease.notRated") : null;
    }
}
