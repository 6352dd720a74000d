using System.Globalization;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings.Documents;
using Toepan.Domain.Ratings.Steps;

namespace Toepan.Domain.Ratings;

/// <summary>One thing a scheme was checked for as a whole.</summary>
/// <param name="Check">Stable key, e.g. <c>reachable</c>.</param>
/// <param name="Passed">Whether it holds. A scheme with a check that does not is refused.</param>
/// <param name="Text">A sentence: what holds, or what does not.</param>
/// <param name="Line">Line of the document concerned, or null.</param>
public sealed record CoherenceCheck(string Check, bool Passed, string Text, int? Line);

/// <summary>
/// Whether the rules of a scheme fit one another: bounds rise; a worse input never gives a better level; every level can be reached, in each
/// region and overall; the overall level stays as near the worst region as ruled; what caps and curves name exists; two occupants are covered.
/// </summary>
internal sealed class SchemeCoherence(Scheme scheme, SchemeLines lines)
{
    private static readonly ProtectionLevel[] Levels = Enum.GetValues<ProtectionLevel>();

    public static IReadOnlyList<CoherenceCheck> Of(Scheme scheme, SchemeLines lines) => [.. new SchemeCoherence(scheme, lines).All()];

    private IEnumerable<CoherenceCheck> All()
    {
        yield return Passed("bounds", $"All {Count(scheme.Regions.Sum(rule => rule.Measures.Count + (rule.Risk is null ? 0 : 1)) + scheme.Structure.Measures.Count)} sets of bounds rise from high over moderate to low protection.");
        yield return Passed("functions", $"All {Count(scheme.Regions.Sum(rule => rule.Risk?.Curves.Count ?? 0))} uses of risk functions name a function that exists for their dummy and takes the unit of their load.");
        IEnumerable<CoherenceCheck> failed = [.. Monotone(), .. RegionsReached(), .. StructureReached(), .. OverallReached()];
        var all = failed.ToList();
        foreach (var check in all)
        {
            yield return check;
        }

        if (all.TrueForAll(check => check.Check != "monotone"))
        {
            yield return Passed("monotone", "A worse input never gives a better level: curves never fall, bounds rise, limits, caps and holds only make a level worse, and a worse structure never holds less.");
        }

        if (all.TrueForAll(check => check.Check != "reachable"))
        {
            yield return Passed("reachable", "Every level can be reached, in each region, for the structure, and overall.");
        }

        yield return Passed("overall", OverallWords());
        yield return Passed("caps", $"All {Count(scheme.Caps.Count)} caps wait for a kind of finding that exists and hold a region of this scheme or the overall level.");
        yield return Passed("occupants", "With two occupants the driver gives the overall level, or without one the occupant in the lowest seat; the others are rated beside it.");
        yield return Passed("dummies", Dummies());
    }

    private string OverallWords()
    {
        var steps = scheme.Overall.StepsBetterThanWorst;
        var better = steps switch { 0 => "never better than it", 1 => "at most one step better than it", _ => $"at most {Count(steps)} steps better than it" };
        return $"Before structure and findings the overall level is never worse than the worst region and {better}; structure and findings only make it worse.";
    }

    private string Dummies()
    {
        var missing = Enum.GetValues<DummyType>().Where(dummy => !scheme.RegionsOf(dummy).Any()).ToList();
        return missing.Count == 0
            ? "Both dummies have regions, and each region counts once in the overall rule."
            : $"Each region counts once in the overall rule. There are no regions for dummy {string.Join(" or ", missing)}: an occupant of that size is not rated.";
    }

    private IEnumerable<CoherenceCheck> Monotone()
    {
        var atBest = ProtectionLevel.High;
        foreach (var when in Levels)
        {
            var holds = scheme.Structure.Holds.Where(hold => hold.When == when).ToList();
            var here = holds.Select(hold => hold.AtBest).DefaultIfEmpty(ProtectionLevel.High).Max();
            if (here < atBest)
            {
                yield return new(
                    "monotone", false,
                    $"A structure of {when.Protection()} leaves the overall level at {here.Protection()} at best, a better structure only at {atBest.Protection()}: a worse input would give a better level.",
                    lines.Of(holds.Count > 0 ? holds[0] : scheme.Structure));
            }

            atBest = ProtectionLevels.Worse(atBest, here);
        }
    }

    private IEnumerable<CoherenceCheck> RegionsReached() =>
        from rule in scheme.Regions
        let steps = LevelSteps.Of(rule)
        from level in Levels
        where !LevelSteps.Reaches(steps, level)
        select new CoherenceCheck(
            "reachable", false,
            $"The {rule.Name} of dummy {rule.Dummy} can never be rated {level.Protection()}: limits or bounds leave no value for it.", lines.Of(rule));

    private IEnumerable<CoherenceCheck> StructureReached() =>
        from level in Levels
        where !LevelSteps.Reaches([.. scheme.Structure.Measures.Select(LevelSteps.Of)], level)
        select new CoherenceCheck("reachable", false, $"The {scheme.Structure.Name} can never be rated {level.Protection()}: bounds leave no value for it.", lines.Of(scheme.Structure));

    private IEnumerable<CoherenceCheck> OverallReached() =>
        from dummy in Enum.GetValues<DummyType>()
        where scheme.RegionsOf(dummy).Any()
        let reached = OverallLevels.Of(scheme, dummy)
        from level in Levels
        where !reached.Contains(level)
        select new CoherenceCheck(
            "reachable", false, $"With dummy {dummy} the overall level can never be {level.Protection()}, whatever the regions and the structure are.", lines.Of(scheme.Overall));

    private static CoherenceCheck Passed(string check, string text) => new(check, true, text, null);

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
