using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>
/// The overall levels that some completion of what is missing or bounded would give. Regions are taken as independent; joint risks are
/// continuous between the ends of their ranges, so every level between is open.
/// </summary>
internal sealed class Completions(Scheme scheme, MeasureLookup measures, Occupant rated, CapStep caps)
{
    /// <summary>Levels from best to worst; empty where nothing is missing or bounded.</summary>
    public IReadOnlyList<ProtectionLevel> Overall(IReadOnlyList<RegionState> regions, RegionState structure)
    {
        var source = new RegionOptions(scheme, measures);
        var rules = scheme.RegionsOf(rated.Dummy).ToDictionary(rule => rule.Region, StringComparer.Ordinal);
        var options = regions.ToDictionary(state => state.Region, state => source.Of(state, rules[state.Region]), StringComparer.Ordinal);
        var structures = source.OfStructure(structure);
        if (regions.Count == 0 || regions.All(state => Certain(state, options[state.Region])) && Certain(structure, structures))
        {
            return [];
        }

        var life = Part(scheme.Overall.LifeOf(rated.Dummy), options);
        var leg = Part(scheme.Overall.LegsOf(rated.Dummy), options);
        var levels =
            from a in life
            from b in leg
            from s in structures.Select(option => option.Level).Distinct()
            select OverallStep.Of(scheme, a.Level, b.Level, ProtectionLevels.Worse(a.Worst, b.Worst), s, caps.OverallAtBest).Final;
        return [.. levels.Distinct().Order()];
    }

    private static HashSet<(ProtectionLevel Level, ProtectionLevel Worst)> Part(PartRule? part, Dictionary<string, List<Option>> options)
    {
        HashSet<(ProtectionLevel Level, ProtectionLevel Worst)> none = [(ProtectionLevel.High, ProtectionLevel.High)];
        var joint = part?.Joint is { } rule ? Joint(rule, options) : none;
        var worst = part is { WorstOf.Count: > 0 } ? Worst(part.WorstOf, options) : none;
        return [.. from a in joint from b in worst select (ProtectionLevels.Worse(a.Level, b.Level), ProtectionLevels.Worse(a.Worst, b.Worst))];
    }

    private static bool Certain(RegionState state, List<Option> options) =>
        state.Level is not null && options.Count == 1 && options[0].Least == options[0].Most;

    /// <summary>Pairs of the joint level and the worst region level that are open together.</summary>
    private static HashSet<(ProtectionLevel Level, ProtectionLevel Worst)> Joint(JointRule rule, Dictionary<string, List<Option>> options)
    {
        var pairs = new HashSet<(ProtectionLevel, ProtectionLevel)>();
        foreach (var chosen in Choices([.. rule.Groups.SelectMany(group => group)], options))
        {
            var worst = chosen.Values.Max(option => option.Level);
            var best = rule.Bounds.Of(OverallStep.Joint(rule.Groups, region => chosen[region].Least));
            var last = rule.Bounds.Of(OverallStep.Joint(rule.Groups, region => chosen[region].Most));
            for (var level = best; level <= last; level++)
            {
                pairs.Add((level, worst));
            }
        }

        return pairs;
    }

    private static HashSet<(ProtectionLevel Level, ProtectionLevel Worst)> Worst(IReadOnlyList<string> regions, Dictionary<string, List<Option>> options) =>
        [.. Choices(regions, options).Select(chosen => chosen.Values.Max(option => option.Level)).Select(worst => (worst, worst))];

    /// <summary>Every way to choose one option for each region.</summary>
    private static IEnumerable<Dictionary<string, Option>> Choices(IReadOnlyList<string> regions, Dictionary<string, List<Option>> options)
    {
        IEnumerable<Dictionary<string, Option>> choices = [new(StringComparer.Ordinal)];
        foreach (var region in regions)
        {
            choices = choices.SelectMany(chosen => options[region].Select(option => new Dictionary<string, Option>(chosen, StringComparer.Ordinal) { [region] = option }));
        }

        return choices;
    }
}
