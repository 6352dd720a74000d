using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings.Documents;

namespace Toepan.Domain.Ratings;

/// <summary>What a scheme must hold as a whole: its parts name one another rightly.</summary>
internal static class SchemeChecks
{
    public static void Check(Scheme scheme, ObjectReader document, DocumentProblems problems)
    {
        foreach (var problem in Functions(scheme).Concat(Regions(scheme)).Distinct())
        {
            problems.Add(document.LineOf("regions"), "regions", problem);
        }

        foreach (var problem in Enum.GetValues<DummyType>().SelectMany(dummy => Overall(scheme, dummy)))
        {
            problems.Add(document.LineOf("overall"), "overall", problem);
        }

        foreach (var problem in Caps(scheme).Distinct())
        {
            problems.Add(document.LineOf("caps"), "caps", problem);
        }
    }

    private static IEnumerable<string> Functions(Scheme scheme) =>
        from rule in scheme.Regions
        where rule.Risk is not null
        from curve in rule.Risk!.Curves
        where RiskFunctions.Find(curve.Function, rule.Dummy) is null
        select $"{rule.Region}: there is no risk function {curve.Function} for dummy {rule.Dummy}.";

    private static IEnumerable<string> Regions(Scheme scheme) =>
        from same in scheme.Regions.GroupBy(rule => (rule.Region, rule.Dummy))
        where same.Count() > 1
        select $"{same.Key.Region} is given twice for dummy {same.Key.Dummy}.";

    /// <summary>Every region of a dummy must count once, in life or in legs, and a joint risk needs regions rated by risk.</summary>
    private static IEnumerable<string> Overall(Scheme scheme, DummyType dummy)
    {
        var rules = scheme.RegionsOf(dummy).ToList();
        var legs = scheme.Overall.Legs.Where(rule => rule.Dummy == dummy).ToList();
        if (legs.Count != 1)
        {
            yield return $"legs has {legs.Count} rules for dummy {dummy}; it needs one.";
            yield break;
        }

        var life = scheme.Overall.Life.Groups.SelectMany(group => group).ToList();
        var counted = life.Concat(legs[0].Regions).ToList();
        foreach (var region in rules.Select(rule => rule.Region).Where(region => counted.Count(c => c == region) != 1))
        {
            yield return $"{region} of dummy {dummy} counts {counted.Count(c => c == region)} times in the overall rule; it must count once.";
        }

        foreach (var region in counted.Distinct().Where(region => !rules.Exists(rule => rule.Region == region)))
        {
            yield return $"The overall rule names {region}, which has no rule for dummy {dummy}.";
        }

        var joint = life.Concat(legs[0].Joint is null ? [] : legs[0].Regions);
        foreach (var region in joint.Where(region => rules.Exists(rule => rule.Region == region && rule.Risk is null)))
        {
            yield return $"{region} of dummy {dummy} has no risk and cannot enter a joint risk.";
        }
    }

    private static IEnumerable<string> Caps(Scheme scheme)
    {
        var known = scheme.Regions.Select(rule => rule.Region).ToHashSet(StringComparer.Ordinal);
        foreach (var cap in scheme.Caps)
        {
            string[] named = cap.Region is null ? [.. cap.FindingRegions] : [cap.Region];
            foreach (var region in named.Where(region => !known.Contains(region)))
            {
                yield return $"{cap.Rule} holds {region}, which is no region of this scheme.";
            }
        }

        foreach (var same in scheme.Caps.GroupBy(cap => cap.Rule).Where(same => same.Count() > 1))
        {
            yield return $"{same.Key} is given twice.";
        }
    }
}
