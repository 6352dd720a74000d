using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>The overall levels that some run with a dummy could get, without findings: tried over regions at the ends and the middle of each level.</summary>
internal static class OverallLevels
{
    private static readonly double[] Shares = [0.001, 0.5, 1];
    private static readonly ProtectionLevel[] Levels = Enum.GetValues<ProtectionLevel>();

    public static IReadOnlySet<ProtectionLevel> Of(Scheme scheme, DummyType dummy)
    {
        var rules = scheme.RegionsOf(dummy).ToList();
        var reached = new HashSet<ProtectionLevel>();
        IEnumerable<Func<RegionRule, bool>> worse = [_ => true, .. rules.Select(one => (Func<RegionRule, bool>)(rule => rule == one))];
        foreach (var here in worse)
        {
            foreach (var (level, rest, share) in from a in Levels from b in Levels where b <= a from s in Shares select (a, b, s))
            {
                reached.UnionWith(Overall(scheme, dummy, rules, rule => here(rule) ? level : rest, share));
            }
        }

        return reached;
    }

    private static IEnumerable<ProtectionLevel> Overall(
        Scheme scheme, DummyType dummy, List<RegionRule> rules, Func<RegionRule, ProtectionLevel> levelOf, double share)
    {
        var levels = rules.ToDictionary(rule => rule.Region, levelOf, StringComparer.Ordinal);
        var excess = rules.ToDictionary(rule => rule.Region, rule => Excess(rule.Risk?.Bounds, levels[rule.Region], share), StringComparer.Ordinal);
        var life = Part(scheme.Overall.LifeOf(dummy)!, levels, excess);
        var legs = scheme.Overall.LegsOf(dummy) is { } rule ? Part(rule, levels, excess) : life;
        return Levels.Select(structure => OverallStep.Of(scheme, life, legs, levels.Values.Max(), structure, ProtectionLevel.High).Final);
    }

    private static ProtectionLevel Part(PartRule part, Dictionary<string, ProtectionLevel> levels, Dictionary<string, double> excess) =>
        part.Of(part.Joint is { } joint ? OverallStep.Joint(joint.Groups, region => excess[region]) : null, region => levels[region]);

    private static double Excess(LevelBounds? bounds, ProtectionLevel level, double share)
    {
        if (bounds is null)
        {
            return 0;
        }

        var from = level == ProtectionLevel.High ? 0 : bounds.Largest(level - 1);
        return from + (share * (Math.Min(1, bounds.Largest(level)) - from));
    }
}
