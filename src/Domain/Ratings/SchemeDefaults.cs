using Toepan.Domain.Measures;

namespace Toepan.Domain.Ratings;

/// <summary>What a region rule means where the document leaves something out.</summary>
internal static class SchemeDefaults
{
    /// <summary>
    /// Every load of a risk that is a measure is an input; a risk whose loads are none is an input itself; without inputs of its own a region
    /// rated on measures needs each of them. Findings name <c>lowerleg.left</c> as <c>lower-leg-left</c>, any other region by its key with hyphens.
    /// </summary>
    public static RegionRule Completed(RegionRule rule)
    {
        IEnumerable<string> needed = rule.Risk is { } risk ? Loads(risk) : rule.Inputs.Count > 0 ? [] : rule.Measures.Select(measure => measure.Measure);
        IEnumerable<IReadOnlyList<string>> added = needed.Where(code => !rule.Inputs.Any(group => group.Contains(code))).Distinct().Select(code => (IReadOnlyList<string>)[code]);
        return rule with
        {
            Inputs = [.. rule.Inputs, .. added],
            FindingRegions = rule.FindingRegions.Count > 0 ? rule.FindingRegions : [Word(rule.Region)],
        };
    }

    private static List<string> Loads(RiskRule risk)
    {
        var measured = risk.Curves.Select(curve => curve.Load).Where(load => MeasureCatalogue.Find(load) is not null).ToList();
        return measured.Count == risk.Curves.Count ? measured : [risk.Measure];
    }

    private static string Word(string region) => region.Replace("lowerleg", "lower-leg", StringComparison.Ordinal).Replace('.', '-');
}
