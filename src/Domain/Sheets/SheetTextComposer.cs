using Toepan.Domain.Packages;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Sheets;

/// <summary>Facts → the texts of a sheet in one language.</summary>
internal static class SheetTextComposer
{
    private const string LabelPrefix = "label.";
    private static readonly string[] Cautions = ["not.other", "not.mass", "not.population", "not.law"];

    public static SheetText Compose(SheetFacts facts, IReadOnlyList<SheetRegion> regions, SheetWriter writer) => new()
    {
        Language = writer.Texts.Language,
        Direction = writer.Texts.Direction,
        Applies = Applies(facts, writer),
        Level = Level(facts.Rating.Overall, writer.Texts),
        Step = facts.Rating.Overall is null ? null : writer.Say("step", "level.step"),
        Because = SheetReason.Of(facts, writer),
        Space = SheetSpaceText.Sentences(writer, facts),
        SpaceLabels = SheetSpaceText.Labels(writer, facts),
        People = [writer.Say("people", $"people.{facts.Method.Dummy}")],
        Regions = [.. regions.Select(region => Region(region, writer))],
        Inspection = Inspection(facts, writer),
        Holds = Holds(facts, writer),
        NotTold = [.. Cautions.Select(key => writer.Say(key, key))],
        Method = Method(writer),
        NotForRelease = NotForRelease(facts, writer),
        Labels = [.. writer.Texts.Keys.Where(key => key.StartsWith(LabelPrefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal)
            .Select(key => new SheetLabel(key[LabelPrefix.Length..], writer.Texts[key]))],
    };

    /// <summary>"Moderate protection", or "Not rated".</summary>
    public static string Level(ProtectionLevel? level, SheetTexts texts) => texts[level switch
    {
        ProtectionLevel.High => "label.level.high",
        ProtectionLevel.Moderate => "label.level.moderate",
        ProtectionLevel.Low => "label.level.low",
        ProtectionLevel.VeryLow => "label.level.very-low",
        _ => "label.level.none",
    }];

    private static List<SheetSentence> Applies(SheetFacts facts, SheetWriter writer)
    {
        var key = $"class.{facts.Vehicle.ClassKey}";
        object group = writer.Texts.Knows(key) ? writer.Word(key) : "class";
        var years = writer.Has("years.from", "years.to") && facts.Vehicle.ModelYearTo > facts.Vehicle.ModelYearFrom ? "applies.years"
            : writer.Has("years.from") ? "applies.from" : "applies.class";
        var sentences = new List<SheetSentence> { writer.Say("applies", years, ("class", group)) };
        if (writer.Has("built.from"))
        {
            sentences.Add(writer.Say("built", writer.Has("built.to") ? "applies.built.between" : "applies.built.from"));
        }

        if (facts.Vehicle.Twins.Count > 0)
        {
            sentences.Add(writer.Say("twins", "applies.twins", ("twins", writer.List([.. facts.Vehicle.Twins.Select(twin => writer.Figure($"twin.{twin.Key}"))]))));
        }

        return sentences;
    }

    private static SheetRegionText Region(SheetRegion region, SheetWriter writer)
    {
        var word = SheetRegions.Word(region.Region, writer.Texts);
        var injury = $"injury.{region.Region}";
        var key = $"region.{region.Region}";
        var sentence = region.Level is null ? writer.Say(key, "region.absent")
            : region.Risk is null || !writer.Texts.Knows(injury) ? writer.Say(key, "region.loads")
            : writer.Say(key, "region.risk", ("risk", $"risk.{region.Region}"), ("injury", writer.Word(injury)), ("range", Range(region.Region, writer)));
        return new(region.Region, char.ToUpperInvariant(word[0]) + word[1..], Level(region.Level, writer.Texts), sentence);
    }

    private static SheetSentence Range(string region, SheetWriter writer)
    {
        var (from, to) = ($"risk.{region}.from", $"risk.{region}.to");
        if (!writer.Has(from, to))
        {
            return new("range", "", []);
        }

        return writer.Figure(from).Text == writer.Figure(to).Text
            ? writer.Say("range", "range.same", ("to", to))
            : writer.Say("range", "range.between", ("from", from), ("to", to));
    }

    private static List<SheetSentence> Inspection(SheetFacts facts, SheetWriter writer)
    {
        var kinds = facts.Findings.Where(finding => finding.Severity != FindingSeverity.Note && writer.Texts.Knows($"finding.{finding.Kind}"))
            .OrderByDescending(finding => finding.Severity).Select(finding => $"finding.{finding.Kind}").Distinct().ToList();
        return [.. (kinds.Count > 0 ? kinds : ["finding.none"]).Select(key => writer.Say(key, key))];
    }

    private static List<SheetSentence> Holds(SheetFacts facts, SheetWriter writer)
    {
        var sentences = new List<SheetSentence>
        {
            !writer.Has("holds.low") ? writer.Say("holds", "holds.unknown")
                : writer.Figure("holds.low").Text == writer.Figure("holds.high").Text ? writer.Say("holds", "holds.one")
                : writer.Say("holds", "holds.between"),
        };
        if (facts.Runs.Count(run => run.Overall is not null) > 1)
        {
            var runs = facts.Runs.Select(run => writer.Say("run", "holds.run", ("test", $"run.{run.Test}"), ("level", new SheetSentence("level", Level(run.Overall, writer.Texts), []))));
            sentences.Add(writer.Say("runs", "holds.runs", ("list", writer.List([.. runs]))));
        }

        return sentences;
    }

    private static List<SheetSentence> Method(SheetWriter writer) =>
    [
        writer.Has("speed", "overlap") ? writer.Say("method.run", "method.run") : writer.Say("method.run", "method.run.short"),
        .. writer.Has("mass") ? new[] { writer.Say("method.mass", "method.mass") } : [],
        writer.Say("method.scheme", "method.scheme"), writer.Say("method.evidence", "method.evidence"),
    ];

    private static SheetSentence? NotForRelease(SheetFacts facts, SheetWriter writer)
    {
        if (facts.Rating.Valid)
        {
            return facts.Rating.Overall is null ? writer.Say("notForRelease", "notForRelease.notRated") : null;
        }

        var items = facts.Conduct.Items.Where(item => item.Fails).Select(item => $"item.{item.Item}").Where(writer.Texts.Knows).Select(writer.Word).ToList();
        return items.Count == 0 ? writer.Say("notForRelease", "notForRelease.unknown") : writer.Say("notForRelease", "notForRelease.invalid", ("items", writer.List(items)));
    }
}
