using Toepan.Domain.Measures;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>The worst level of the measures present, each by its own bounds. The driver is the worst; of equals, the one that uses most of its bound.</summary>
internal static class MeasuredLevel
{
    /// <param name="limits">The largest value of a measure that a limit allows at a level; +∞ where there is none.</param>
    public static RegionState Rate(
        RegionState state, IReadOnlyList<RatedMeasure> rules, MeasureLookup measures, Func<string, ProtectionLevel, double> limits)
    {
        var present = rules
            .Select(rule => (Rule: rule, Measure: measures.Find(rule.Measure, state.Position)))
            .Where(pair => pair.Measure?.Value is not null)
            .Select(pair => (Level: pair.Rule.Bounds.Of(pair.Measure!.Value!.Value), Use: pair.Measure.Value!.Value / pair.Rule.Bounds.Low, Driver: DriverOf(pair.Rule, pair.Measure)))
            .OrderByDescending(rated => rated.Level)
            .ThenByDescending(rated => rated.Use)
            .ToList();
        return state with
        {
            Level = present[0].Level,
            Unlimited = present[0].Level,
            Driver = present[0].Driver,
            Others = [.. present.Skip(1).Select(rated => rated.Driver)],
        };

        Driver DriverOf(RatedMeasure rule, Measure measure) => new(
            rule.Measure, measure.Value!.Value, measure.Unit,
            level => Math.Min(rule.Bounds.Largest(level), limits(rule.Measure, level)), measure.Uncertainty, measure.Detail);
    }
}
