using System.Globalization;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings.Steps;

namespace Toepan.Domain.Ratings;

/// <summary>One line of arithmetic behind a rating.</summary>
/// <param name="Region">Region it belongs to; null for the overall level.</param>
/// <param name="Position">Seat position; null for the structure and the overall level.</param>
/// <param name="Text">The formula with its numbers.</param>
public sealed record ArithmeticStep(string? Region, int? Position, string Text);

/// <summary>
/// The formulas of a rating with their numbers in them: risk by each curve, the excess over zero load, the bounds it was held against, measures against
/// theirs, and the joint excess risks. Numbers are shown with six significant digits.
/// </summary>
public static class RatingArithmetic
{
    public static IReadOnlyList<ArithmeticStep> Of(Rating rating, Scheme scheme, RatingInputs inputs)
    {
        var measures = new MeasureLookup(inputs.Measures);
        var dummies = inputs.Occupants.ToDictionary(occupant => occupant.Position, occupant => occupant.Dummy);
        var lines = rating.Regions
            .Where(region => region.Level is not null && region.Position is { } seat && dummies.ContainsKey(seat))
            .SelectMany(region => Region(region, scheme, measures, dummies[region.Position!.Value]));
        var structure = scheme.Structure.Measures.SelectMany(measure => Measured("structure", null, measure, measures));
        return [.. lines, .. structure, .. Overall(rating, scheme, dummies)];
    }

    private static IEnumerable<ArithmeticStep> Region(RegionRating region, Scheme scheme, MeasureLookup measures, DummyType dummy)
    {
        if (scheme.RegionsOf(dummy).FirstOrDefault(rule => rule.Region == region.Region) is not { } rule)
        {
            return [];
        }

        return rule.Risk is { } risk && region.Risk is { } p && region.Excess is { } e
            ? [.. Curves(region, risk, measures, dummy), Excess(region, risk, dummy, p, e)]
            : rule.Measures.SelectMany(measure => Measured(region.Region, region.Position, measure, measures));
    }

    private static IEnumerable<ArithmeticStep> Curves(RegionRating region, RiskRule risk, MeasureLookup measures, DummyType dummy)
    {
        foreach (var curve in risk.Curves)
        {
            var function = RiskFunctions.Get(curve.Function, dummy);
            var text = measures.Value(curve.Load, region.Position) is { } load
                ? $"{function.Load} = {Number(load)} {function.Unit}".TrimEnd() + $": risk = {function.Formula} = {Number(function.Evaluate(Math.Max(0, load)))} [{function.Source}]"
                : $"{function.Load}: risk = {function.Formula}, reduced with the run [{function.Source}]";
            yield return new(region.Region, region.Position, text);
        }
    }

    private static ArithmeticStep Excess(RegionRating region, RiskRule risk, DummyType dummy, double p, double e)
    {
        var zero = risk.Curves.Max(curve => RiskFunctions.Get(curve.Function, dummy).AtZero);
        return new(
            region.Region, region.Position,
            $"excess risk = (p − p₀)/(1 − p₀) = ({Number(p)} − {Number(zero)})/(1 − {Number(zero)}) = {Number(e)}; {Bounds(risk.Bounds)}: {risk.Bounds.Of(e).Word()}");
    }

    private static IEnumerable<ArithmeticStep> Measured(string region, int? position, RatedMeasure measure, MeasureLookup measures)
    {
        if (measures.Value(measure.Measure, position) is { } value)
        {
            yield return new(region, position, $"{measure.Measure} = {Number(value)} {measure.Unit}".TrimEnd() + $"; {Bounds(measure.Bounds)}: {measure.Bounds.Of(value).Word()} [{measure.Source}]");
        }
    }

    private static IEnumerable<ArithmeticStep> Overall(Rating rating, Scheme scheme, Dictionary<int, DummyType> dummies)
    {
        if (!dummies.TryGetValue(rating.Position, out var dummy))
        {
            yield break;
        }

        var own = rating.Regions.Where(region => region.Position == rating.Position && region.Excess is not null).ToDictionary(region => region.Region, region => region.Excess!.Value);
        foreach (var (part, joint) in new[] { (scheme.Overall.LifeOf(dummy), rating.LifeExcess), (scheme.Overall.LegsOf(dummy), rating.LegsExcess) })
        {
            if (part?.Joint is { } rule && joint is { } e && rule.Groups.All(group => group.All(own.ContainsKey)))
            {
                var factors = rule.Groups.Select(group => $"(1 − {(group.Count == 1 ? Number(own[group[0]]) : $"max({string.Join("; ", group.Select(region => Number(own[region])))})")})");
                yield return new(null, null, $"{rule.Name}: joint excess risk = 1 − {string.Join(" · ", factors)} = {Number(e)}; {Bounds(rule.Bounds)}: {rule.Bounds.Of(e).Word()}");
            }
        }
    }

    private static string Bounds(LevelBounds bounds) => $"high ≤ {Number(bounds.High)}, moderate ≤ {Number(bounds.Moderate)}, low ≤ {Number(bounds.Low)}";

    private static string Number(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
