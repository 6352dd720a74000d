using Toepan.Domain.Measures;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>Where the levels of each measure of a region end, limits included; without a run.</summary>
internal static class LevelSteps
{
    /// <summary>One function a measure: the largest value that allows a level, in the measure's unit; of a risk in excess risk where its loads are no measures.</summary>
    public static IReadOnlyList<Func<ProtectionLevel, double>> Of(RegionRule rule)
    {
        if (rule.Risk is not { } risk)
        {
            return [.. rule.Measures.Select(measure => Held(rule, measure.Measure, measure.Bounds.Largest))];
        }

        var excess = new ExcessRisk(risk, rule.Dummy);
        return risk.Curves.All(curve => MeasureCatalogue.Find(curve.Load) is not null)
            ? [.. risk.Curves.Select(curve => Held(rule, curve.Load, level => excess.Load(curve, level)))]
            : [risk.Bounds.Largest];
    }

    public static Func<ProtectionLevel, double> Of(RatedMeasure measure) => measure.Bounds.Largest;

    /// <summary>Whether some value of one measure, at least zero, with the others at zero, gives the level.</summary>
    public static bool Reaches(IReadOnlyList<Func<ProtectionLevel, double>> steps, ProtectionLevel level) => level == ProtectionLevel.High
        ? steps.All(step => step(level) >= 0)
        : steps.Any(step => step(level) > step(level - 1) && step(level) > 0);

    private static Func<ProtectionLevel, double> Held(RegionRule rule, string measure, Func<ProtectionLevel, double> free) => level =>
        rule.Limits.Where(limit => limit.Measure == measure && level < limit.AtBest).Select(limit => limit.Limit).Append(free(level)).Min();
}
