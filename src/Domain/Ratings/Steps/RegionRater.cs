using Toepan.Domain.Measures;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>One region of one occupant: inputs, level by risk or by measures, limits. Caps come after.</summary>
internal sealed class RegionRater(Scheme scheme, MeasureLookup measures)
{
    public RegionState Rate(RegionRule rule, Occupant occupant)
    {
        var state = new RegionState { Region = rule.Region, Name = rule.Name, Position = occupant.Position };
        var missing = measures.Missing(scheme, rule.Inputs, occupant.Position);
        var free = missing is not null ? state with { NotRated = missing }
            : rule.Risk is { } risk ? ByRisk(state, rule, risk)
            : MeasuredLevel.Rate(state, rule.Measures, measures, Limits(rule));
        return rule.Limits.Aggregate(free, (current, limit) => Held(current, rule, limit));
    }

    private RegionState ByRisk(RegionState state, RegionRule rule, RiskRule risk)
    {
        var excess = new ExcessRisk(risk, rule.Dummy);
        var loads = risk.Curves.Where(curve => measures.Value(curve.Load, state.Position) is not null).ToList();
        var given = measures.Find(risk.Measure, state.Position);
        if (given?.Value is null && loads.Count < risk.Curves.Count)
        {
            return state with { NotRated = $"{scheme.WordOf(risk.Measure)}: {measures.WhyAbsent(risk.Measure, state.Position)}" };
        }

        var p = loads.Count == risk.Curves.Count
            ? loads.Max(curve => excess.ByCurve(curve, measures.Value(curve.Load, state.Position)!.Value))
            : given!.Value!.Value;
        var e = excess.Of(p);
        var level = risk.Bounds.Of(e);
        var drivers = loads.Count == risk.Curves.Count ? Loads(state, rule, loads, excess) : [Risk(risk, p, given!, excess)];
        return state with
        {
            Risk = p,
            Excess = e,
            Unlimited = level,
            Level = level,
            Driver = drivers[0],
            Others = drivers[1..],
            Behind = loads.Count == risk.Curves.Count ? null : Behind(risk, rule.Dummy, given!, excess),
        };
    }

    /// <summary>The loads as drivers, the one with the largest risk first.</summary>
    private List<Driver> Loads(RegionState state, RegionRule rule, List<CurveUse> loads, ExcessRisk excess)
    {
        var limits = Limits(rule);
        return
        [
            .. loads
                .Select(curve => (Curve: curve, Measure: measures.Find(curve.Load, state.Position)!))
                .OrderByDescending(pair => excess.ByCurve(pair.Curve, pair.Measure.Value!.Value))
                .Select(pair => new Driver(
                    pair.Curve.Load, pair.Measure.Value!.Value, pair.Measure.Unit,
                    level => Math.Min(excess.Load(pair.Curve, level), limits(pair.Curve.Load, level)), pair.Measure.Uncertainty, pair.Measure.Detail)),
        ];
    }

    private static Driver Risk(RiskRule rule, double p, Measure given, ExcessRisk excess) =>
        new(rule.Measure, p, given.Unit, level => level == ProtectionLevel.VeryLow ? double.PositiveInfinity : excess.Risk(rule.Bounds.Largest(level)));

    private static Driver? Behind(RiskRule rule, DummyType dummy, Measure given, ExcessRisk excess)
    {
        if (rule.Curves.FirstOrDefault(curve => curve.Load == given.Detail) is not { } curve)
        {
            return null;
        }

        var function = RiskFunctions.Get(curve.Function, dummy);
        return new(curve.Load, function.Inverse(given.Value!.Value), function.Unit, level => excess.Load(curve, level));
    }

    /// <summary>The largest value of a measure that its limit allows at a level.</summary>
    private static Func<string, ProtectionLevel, double> Limits(RegionRule rule) => (measure, level) =>
        rule.Limits.Where(limit => limit.Measure == measure && level < limit.AtBest).Select(limit => limit.Limit).DefaultIfEmpty(double.PositiveInfinity).Min();

    private RegionState Held(RegionState state, RegionRule rule, LimitRule limit)
    {
        var measure = measures.Find(limit.Measure, state.Position);
        var fired = Exceeded(measure, limit.Limit);
        var changed = fired && state.Level is { } level && level < limit.AtBest;
        var text = new LimitSentence(scheme, limit, measure).Text(state, fired, changed);
        var outcome = new RuleOutcome($"limit.{limit.Measure}", fired, changed, state.Region, state.Position, text);
        if (!fired)
        {
            return state.Noting(outcome);
        }

        var held = state.Holding(outcome, limit.AtBest);
        return state.Level is null || measure!.Value is not { } value ? held
            : Decides(state, limit, value) ? Driven(held, rule, limit, measure, value)
            : Beside(held, rule, limit, measure, value);
    }

    /// <summary>Over its limit, or certainly so by a bound although its value is not known.</summary>
    internal static bool Exceeded(Measure? measure, double limit) => (measure?.Value ?? measure?.Bounds?.AtLeast) > limit;

    /// <summary>A limit decides where it changed the level, or where it did so as much as the one that did and is exceeded by more.</summary>
    private static bool Decides(RegionState state, LimitRule limit, double value) =>
        state.Level < limit.AtBest
        || (state.Unlimited < limit.AtBest && state.Driver is { } driver && value / limit.Limit > driver.Value / driver.Largest(limit.AtBest - 1));

    private static RegionState Driven(RegionState held, RegionRule rule, LimitRule limit, Measure measure, double value)
    {
        List<Driver> all = [held.Driver!, .. held.Others];
        var driver = all.Find(d => d.Code == limit.Measure) ?? Limited(rule, limit, measure, value);
        return held with { Driver = driver, Others = [.. all.Where(d => d != driver)], Behind = driver.Code == held.Driver!.Code ? held.Behind : null };
    }

    /// <summary>An exceeded limit that does not decide still has to be met before the level can be better.</summary>
    private static RegionState Beside(RegionState held, RegionRule rule, LimitRule limit, Measure measure, double value) =>
        held.Others.Append(held.Driver!).Any(d => d.Code == limit.Measure)
            ? held
            : held with { Others = [.. held.Others, Limited(rule, limit, measure, value)] };

    private static Driver Limited(RegionRule rule, LimitRule limit, Measure measure, double value) =>
        new(limit.Measure, value, measure.Unit, level => Limits(rule)(limit.Measure, level));
}
