using System.Globalization;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings.Documents;

namespace Toepan.Domain.Ratings;

/// <summary>Document nodes → scheme types.</summary>
internal sealed class SchemeDocument(DocumentProblems problems, SchemeLines lines)
{
    private static readonly string[] Sides = ["left", "right"];

    public Scheme Read(LinedNode root)
    {
        var reader = new ObjectReader(root, problems);
        lines.Root = reader.Line;
        if (reader.Has("$schema"))
        {
            reader.Text("$schema");
        }

        var scheme = new Scheme
        {
            Key = reader.Text("key"),
            Edition = reader.Whole("edition"),
            Title = reader.Text("title"),
            Procedure = reader.Text("procedure"),
            Source = reader.Text("source"),
            Regions = [.. reader.List("regions").SelectMany(Regions)],
            Structure = Structure(reader.Object("structure")),
            Overall = Overall(reader.Object("overall")),
            Caps = [.. reader.Objects("caps", mayBeEmpty: true).Select(Cap)],
            Repeatability = Repeatability(reader.Object("repeatability")),
            Words = Words(reader.Object("words")),
        };
        reader.Close();
        new SchemeChecks(scheme, lines, problems).Check(reader);
        return scheme;
    }

    /// <summary>One rule for each side and dummy that a written region stands for.</summary>
    private IEnumerable<RegionRule> Regions(LinedNode node)
    {
        var written = node is LinedObject o ? o.Members.FirstOrDefault(m => m.Name == "region")?.Value : null;
        var sided = written is LinedScalar { Text: { } text } && text.Contains("{side}", StringComparison.Ordinal);
        string?[] sides = sided ? [.. Sides] : [null];
        foreach (var side in sides)
        {
            var dummies = new ObjectReader(node, problems).Texts("dummies");
            foreach (var dummy in dummies)
            {
                yield return Region(new ObjectReader(node, problems, side), dummy);
            }
        }
    }

    private RegionRule Region(ObjectReader reader, string dummy)
    {
        reader.Texts("dummies");
        var read = new RegionRule
        {
            Region = reader.Text("region"),
            Name = reader.Text("name"),
            Dummy = Dummy(reader, "dummies", dummy),
            Inputs = reader.Has("inputs") ? reader.Groups("inputs") : [],
            FindingRegions = reader.Has("findings") ? reader.Texts("findings") : [],
            Risk = reader.Has("risk") ? Risk(reader.Object("risk")) : null,
            Measures = reader.Has("measures") ? [.. reader.Objects("measures").Select(Rated)] : [],
            Limits = reader.Has("limits") ? [.. reader.Objects("limits", mayBeEmpty: true).Select(limit => Limit(limit, dummy))] : [],
        };
        reader.Close();
        var rule = lines.Keep(SchemeDefaults.Completed(read), reader.Line);
        if (rule.Risk is null == (rule.Measures.Count == 0))
        {
            problems.Add(reader.Line, "basis", $"{rule.Region} must be rated either by risk or by measures.");
        }

        return rule;
    }

    private RiskRule Risk(ObjectReader reader)
    {
        var curves = reader.Objects("curves").Select(curve =>
        {
            var use = lines.Keep(new CurveUse(curve.Text("load"), curve.Text("function")), curve.Line);
            curve.Close();
            return use;
        }).ToList();
        var rule = lines.Keep(new RiskRule(reader.Text("measure"), curves, Bounds(reader), reader.Text("source")), reader.LineOf("measure"));
        reader.Close();
        Share(rule.Bounds, reader);

        return rule;
    }

    private RatedMeasure Rated(ObjectReader reader)
    {
        var rated = lines.Keep(new RatedMeasure(reader.Text("measure"), Bounds(reader), reader.Text("unit", mayBeEmpty: true), reader.Text("source")), reader.Line);
        reader.Close();
        return rated;
    }

    private LimitRule Limit(ObjectReader reader, string dummy)
    {
        var byDummy = reader.Object("limit");
        var limit = lines.Keep(
            new LimitRule(reader.Text("measure"), byDummy.Number(dummy), reader.Text("unit", mayBeEmpty: true), Level(reader, "atBest"), reader.Text("source")),
            reader.Line);
        reader.Close();
        foreach (var other in byDummy.Members)
        {
            Dummy(byDummy, other.Name, other.Name);
        }

        if (!(limit.Limit > 0) && byDummy.Has(dummy))
        {
            problems.Add(byDummy.LineOf(dummy), "limit", $"The limit of {limit.Measure} must be above zero.");
        }

        return limit;
    }

    private StructureRule Structure(ObjectReader reader)
    {
        var holds = reader.Objects("holds", mayBeEmpty: true).Select(hold =>
        {
            var read = lines.Keep(new StructureHold(hold.Text("rule"), Level(hold, "when"), Level(hold, "atBest")), hold.Line);
            hold.Close();
            return read;
        }).ToList();
        var measures = reader.Objects("measures").Select(Rated).ToList();
        var inputs = reader.Has("inputs") ? reader.Groups("inputs") : [.. measures.Select(measure => (IReadOnlyList<string>)[measure.Measure])];
        var rule = new StructureRule(reader.Text("name"), inputs, measures, holds);
        reader.Close();
        return lines.Keep(rule, reader.Line);
    }

    private OverallRule Overall(ObjectReader reader)
    {
        var life = Life(reader);
        var legs = reader.Has("legs") ? reader.Objects("legs", mayBeEmpty: true).SelectMany(Parts).ToList() : [];
        var rule = lines.Keep(new OverallRule(life, legs, reader.Whole("stepsBetterThanWorst")), reader.Line);
        reader.Close();
        if (rule.StepsBetterThanWorst is < 0 or >= LevelWords.Steps)
        {
            problems.Add(
                reader.LineOf("stepsBetterThanWorst"), "overall",
                $"stepsBetterThanWorst is {rule.StepsBetterThanWorst}; it must not be negative and is at most {LevelWords.Steps - 1}.");
        }

        return rule;
    }

    /// <summary>One joint rule for every dummy, or a list of rules by dummy.</summary>
    private List<PartRule> Life(ObjectReader reader)
    {
        if (reader.Node("life") is LinedList)
        {
            return reader.Objects("life").SelectMany(Parts).ToList();
        }

        var written = reader.Object("life");
        var joint = Joint(written);
        return [.. Enum.GetValues<DummyType>().Select(dummy => lines.Keep(new PartRule(dummy, joint.Name, joint, []), written.Line))];
    }

    private List<PartRule> Parts(ObjectReader reader)
    {
        var joint = reader.Has("joint") ? Joint(reader.Object("joint")) : null;
        var worstOf = reader.Has("worstOf") || joint is null ? reader.Texts("worstOf") : [];
        var name = reader.Has("name") ? reader.Text("name") : joint?.Name ?? string.Join(", ", worstOf);
        List<PartRule> rules =
            [.. reader.Texts("dummies").Select(dummy => lines.Keep(new PartRule(Dummy(reader, "dummies", dummy), name, joint, worstOf), reader.Line))];
        reader.Close();
        return rules;
    }

    private JointRule Joint(ObjectReader reader)
    {
        var rule = lines.Keep(new JointRule(reader.Text("name"), reader.Groups("groups"), Bounds(reader)), reader.LineOf("groups"));
        reader.Close();
        Share(rule.Bounds, reader);
        return rule;
    }

    private void Share(LevelBounds bounds, ObjectReader reader)
    {
        if (!(bounds.High >= 0 && bounds.Low < 1))
        {
            problems.Add(
                reader.LineOf("bounds"), "bounds",
                string.Create(CultureInfo.InvariantCulture, $"Bounds of a risk lie between 0 and 1; these go from {bounds.High} to {bounds.Low}."));
        }
    }

    private CapRule Cap(ObjectReader reader)
    {
        var cap = lines.Keep(new CapRule(
            reader.Text("rule"), reader.Text("finding"), Severity(reader), reader.Has("region") ? reader.Text("region") : null,
            reader.Has("findingRegions") ? reader.Texts("findingRegions") : [], Level(reader, "atBest"), reader.Text("words"), reader.Text("source")), reader.Line);
        reader.Close();
        if (cap.Region is not null && cap.FindingRegions.Count > 0)
        {
            problems.Add(reader.Line, "cap", $"{cap.Rule} names both region and findingRegions.");
        }

        return cap;
    }

    private RepeatabilityDefaults Repeatability(ObjectReader reader)
    {
        var scatter = reader.Object("coefficientOfVariation");
        var byMeasure = scatter.Members.ToDictionary(m => m.Name, m => scatter.NumberOf(m.Name, m.Value), StringComparer.Ordinal);
        foreach (var member in scatter.Members.Where(m => byMeasure[m.Name] is not (> 0 and <= 2)))
        {
            problems.Add(
                member.Line, "repeatability",
                string.Create(CultureInfo.InvariantCulture, $"The coefficient of variation of {member.Name} is {byMeasure[member.Name]}; it lies above 0 and at most at 2."));
        }

        var defaults = new RepeatabilityDefaults(byMeasure, reader.Number("displacementStandardDeviationMm"), reader.Text("source"));
        reader.Close();
        return defaults;
    }

    private static Dictionary<string, string> Words(ObjectReader reader) =>
        reader.Members.ToDictionary(member => member.Name, member => reader.Text(member.Name), StringComparer.Ordinal);

    private LevelBounds Bounds(ObjectReader parent)
    {
        var reader = parent.Object("bounds");
        var bounds = new LevelBounds(reader.Number("high"), reader.Number("moderate"), reader.Number("low"));
        reader.Close();
        if (!(bounds.High < bounds.Moderate && bounds.Moderate < bounds.Low))
        {
            problems.Add(
                parent.LineOf("bounds"), "bounds",
                string.Create(CultureInfo.InvariantCulture, $"Bounds must rise from high over moderate to low; these are {bounds.High}, {bounds.Moderate}, {bounds.Low}."));
        }

        return bounds;
    }

    private ProtectionLevel Level(ObjectReader reader, string name)
    {
        var word = reader.Text(name);
        if (LevelWords.Parse(word) is { } level)
        {
            return level;
        }

        problems.Add(reader.LineOf(name), "level", $"{name} is {word}; a level is high, moderate, low or very low.");
        return ProtectionLevel.VeryLow;
    }

    private DummyType Dummy(ObjectReader reader, string name, string code)
    {
        if (Enum.GetNames<DummyType>().Contains(code))
        {
            return Enum.Parse<DummyType>(code);
        }

        problems.Add(reader.LineOf(name), "dummy", $"{code} is no dummy of this edition; they are {string.Join(" and ", Enum.GetNames<DummyType>())}.");
        return DummyType.H3;
    }

    private FindingSeverity Severity(ObjectReader reader)
    {
        var word = reader.Text("severity");
        foreach (var severity in Enum.GetValues<FindingSeverity>().Where(s => string.Equals(s.ToString(), word, StringComparison.OrdinalIgnoreCase)))
        {
            return severity;
        }

        problems.Add(reader.LineOf("severity"), "severity", $"severity is {word}; it is note, concern or severe.");
        return FindingSeverity.Severe;
    }
}
