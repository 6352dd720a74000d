using System.Text.RegularExpressions;
using Toepan.Domain.Measures;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Packages.Sidecars;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings.Documents;

namespace Toepan.Domain.Ratings;

/// <summary>What a scheme names must exist: measures with their unit, risk functions, regions, finding kinds, the procedure. Each problem stands at its line.</summary>
internal sealed partial class SchemeChecks(Scheme scheme, SchemeLines lines, DocumentProblems problems)
{
    /// <summary>Longest key, characters.</summary>
    public const int LongestKey = 60;

    private static readonly string[] Vehicles = ["structure.", "vehicle.", "clearance.", "conduct."];

    /// <summary>Not loads: a larger clearance is better, and conduct is the laboratory's doing.</summary>
    private static readonly string[] NotRateable = ["clearance.", "conduct."];

    public void Check(ObjectReader document)
    {
        if (!KeyPattern().IsMatch(scheme.Key) || scheme.Key.Length > LongestKey || !scheme.Key.EndsWith($"-{scheme.Edition}", StringComparison.Ordinal))
        {
            problems.Add(
                document.LineOf("key"), "key",
                $"key is {scheme.Key}; it is small letters, digits and hyphens, at most {LongestKey}, and ends with the edition: -{scheme.Edition}.");
        }

        if (ProcedureLibrary.Find(scheme.Procedure) is null)
        {
            problems.Add(document.LineOf("procedure"), "procedure", $"There is no procedure {scheme.Procedure}.");
        }

        foreach (var rule in scheme.Regions)
        {
            Region(rule);
        }

        Twice(scheme.Regions, rule => $"{rule.Region} for dummy {rule.Dummy}");
        Twice(scheme.Caps, cap => cap.Rule);
        Twice(scheme.Structure.Holds, hold => hold.Rule);
        Structure();
        foreach (var cap in scheme.Caps)
        {
            Cap(cap);
        }

        foreach (var dummy in Enum.GetValues<DummyType>())
        {
            Overall(dummy);
        }
    }

    private void Region(RegionRule rule)
    {
        if (rule.Region == "structure" || !RegionPattern().IsMatch(rule.Region))
        {
            problems.Add(lines.Of(rule), "region", $"region is {rule.Region}; it is small letters, digits, dots and hyphens, and not structure.");
        }

        foreach (var word in rule.FindingRegions.Where(word => !FindingWords.Regions.Contains(word) && word != rule.Region.Replace('.', '-')))
        {
            problems.Add(lines.Of(rule), "findings", $"Findings never name a region {word}; they name {string.Join(", ", FindingWords.Regions)}.");
        }

        foreach (var code in rule.Inputs.SelectMany(group => group))
        {
            Measure(code, null, rule);
        }

        foreach (var measure in rule.Measures)
        {
            Measure(measure.Measure, measure.Unit, measure);
        }

        foreach (var limit in rule.Limits)
        {
            Measure(limit.Measure, limit.Unit, limit);
        }

        if (rule.Risk is { } risk)
        {
            Risk(rule, risk);
        }
    }

    private void Risk(RegionRule rule, RiskRule risk)
    {
        foreach (var curve in risk.Curves)
        {
            var function = RiskFunctions.Find(curve.Function, rule.Dummy);
            if (function is null)
            {
                problems.Add(
                    lines.Of(curve), "functions",
                    $"{rule.Region}: there is no risk function {curve.Function} for dummy {rule.Dummy}; there are {string.Join(", ", RiskFunctions.All.Where(f => f.Dummy == rule.Dummy).Select(f => f.Name))}.");
            }
            else if (MeasureCatalogue.Find(curve.Load) is { } entry && entry.Unit != function.Unit)
            {
                problems.Add(lines.Of(curve), "functions", $"{curve.Function} takes {function.Load} in '{function.Unit}'; {curve.Load} has the unit '{entry.Unit}'.");
            }
        }

        if (risk.Curves.Any(curve => MeasureCatalogue.Find(curve.Load) is null))
        {
            Unmeasured(rule, risk);
        }
    }

    /// <summary>Loads that are no measures of their own: the risk is reduced with the run, from exactly the three of the lower leg.</summary>
    private void Unmeasured(RegionRule rule, RiskRule risk)
    {
        string[] all = ["ankle", "plateau", "shaft"];
        var named = risk.Curves.Select(curve => curve.Load).Order(StringComparer.Ordinal);
        if (!named.SequenceEqual(all) || !risk.Measure.StartsWith("risk.lowerleg.", StringComparison.Ordinal)
            || risk.Curves.Any(curve => curve.Function != $"lowerleg.{curve.Load}"))
        {
            var load = risk.Curves.First(curve => MeasureCatalogue.Find(curve.Load) is null);
            problems.Add(
                lines.Of(load), "functions",
                $"{rule.Region}: {load.Load} is no measure. Loads are measures, or shaft, ankle and plateau together with their functions and a measure risk.lowerleg.left or .right.");
        }
    }

    private void Measure(string code, string? unit, object part)
    {
        if (MeasureCatalogue.Find(code) is not { } entry)
        {
            problems.Add(lines.Of(part), "measures", $"There is no measure {code}.");
        }
        else if (NotRateable.Any(start => code.StartsWith(start, StringComparison.Ordinal)))
        {
            problems.Add(lines.Of(part), "measures", $"{code} cannot be rated: a level gets worse as its measure grows, and this one is no load.");
        }
        else if (unit is not null && unit != entry.Unit && entry.Unit != "probability")
        {
            problems.Add(lines.Of(part), "unit", $"{code} has the unit '{entry.Unit}', not '{unit}'.");
        }
    }

    private void Structure()
    {
        foreach (var code in scheme.Structure.Inputs.SelectMany(group => group))
        {
            Measure(code, null, scheme.Structure);
        }

        foreach (var measure in scheme.Structure.Measures)
        {
            Measure(measure.Measure, measure.Unit, measure);
            if (!Vehicles.Any(start => measure.Measure.StartsWith(start, StringComparison.Ordinal)))
            {
                problems.Add(lines.Of(measure), "structure", $"{measure.Measure} is a measure of an occupant; the structure is rated on measures of the vehicle.");
            }
        }

        foreach (var group in scheme.Structure.Inputs.Where(group => !group.Any(code => scheme.Structure.Measures.Any(measure => measure.Measure == code))))
        {
            problems.Add(lines.Of(scheme.Structure), "structure", $"The structure needs {string.Join(" or ", group)}, but rates none of it.");
        }
    }

    private void Cap(CapRule cap)
    {
        if (!FindingWords.Kinds.Contains(cap.Finding))
        {
            problems.Add(lines.Of(cap), "caps", $"{cap.Rule} waits for {cap.Finding}, which is no kind of finding; they are {string.Join(", ", FindingWords.Kinds)}.");
        }

        string[] named = cap.Region is null ? [.. cap.FindingRegions] : [cap.Region];
        foreach (var region in named.Where(region => scheme.Regions.All(rule => rule.Region != region)))
        {
            problems.Add(lines.Of(cap), "caps", $"{cap.Rule} holds {region}, which is no region of this scheme.");
        }
    }

    /// <summary>Every region of a dummy counts once, in life or in legs, and a joint risk needs regions rated by risk.</summary>
    private void Overall(DummyType dummy)
    {
        var rules = scheme.RegionsOf(dummy).ToList();
        PartRule[] parts = [.. scheme.Overall.Life.Concat(scheme.Overall.Legs).Where(part => part.Dummy == dummy)];
        if (rules.Count == 0)
        {
            return;
        }

        foreach (var (name, count) in new[] { ("life", scheme.Overall.Life.Count(part => part.Dummy == dummy)), ("legs", scheme.Overall.Legs.Count(part => part.Dummy == dummy)) })
        {
            if (count > 1 || (count == 0 && name == "life"))
            {
                problems.Add(lines.Of(scheme.Overall), "overall", $"{name} has {count} rules for dummy {dummy}; it needs one.");
            }
        }

        var counted = parts.SelectMany(part => part.Regions).ToList();
        foreach (var rule in rules.Where(rule => counted.Count(c => c == rule.Region) != 1))
        {
            problems.Add(
                lines.Of(scheme.Overall), "overall",
                $"{rule.Region} of dummy {dummy} counts {counted.Count(c => c == rule.Region)} times in the overall rule; it must count once, in a joint risk or in worstOf.");
        }

        foreach (var part in parts)
        {
            Part(part, rules);
        }
    }

    private void Part(PartRule part, List<RegionRule> rules)
    {
        foreach (var region in part.Regions.Distinct().Where(region => !rules.Exists(rule => rule.Region == region)))
        {
            problems.Add(lines.Of(part), "overall", $"The overall rule names {region}, which has no rule for dummy {part.Dummy}.");
        }

        foreach (var region in part.Joint?.Groups.SelectMany(group => group) ?? [])
        {
            if (rules.Exists(rule => rule.Region == region && rule.Risk is null))
            {
                problems.Add(lines.Of(part.Joint!), "overall", $"{region} of dummy {part.Dummy} has no risk and cannot enter a joint risk; name it in worstOf.");
            }
        }
    }

    private void Twice<T>(IEnumerable<T> parts, Func<T, string> key)
        where T : class
    {
        foreach (var same in parts.GroupBy(key).Where(same => same.Count() > 1))
        {
            problems.Add(lines.Of(same.Last()), "twice", $"{same.Key} is given twice.");
        }
    }

    [GeneratedRegex(@"\A[a-z0-9]+(-[a-z0-9]+)*\z")]
    private static partial Regex KeyPattern();

    [GeneratedRegex(@"\A[a-z][a-z0-9]*([.-][a-z0-9]+)*\z")]
    private static partial Regex RegionPattern();
}
