namespace Toepan.Domain.Ratings.Steps;

/// <summary>
/// What the regions may still turn out to be where measures are missing or known only as bounds. A missing input may have any value, a
/// bounded one any within its bounds; a measure that is no input and is absent is not assumed either way.
/// </summary>
internal sealed class RegionOptions(Scheme scheme, MeasureLookup measures)
{
    /// <summary>The options of a region; one where nothing is uncertain.</summary>
    public List<Option> Of(RegionState state, RegionRule rule)
    {
        List<Open> open = rule.Risk is { } risk ? [.. Risk(rule, risk)] : [.. rule.Measures.Select(m => Measured(m, rule))];
        open.AddRange(rule.Limits.Where(limit => open.TrueForAll(o => o.Code != limit.Measure)).Select(limit => Limited(rule, limit)));
        return Of(state, rule.Inputs, open);
    }

    public List<Option> OfStructure(RegionState state) =>
        Of(state, scheme.Structure.Inputs, [.. scheme.Structure.Measures.Select(m => new Open(m.Measure, level => m.Bounds.Largest(level), _ => 0))]);

    private List<Option> Of(RegionState state, IReadOnlyList<IReadOnlyList<string>> inputs, List<Open> open)
    {
        if (state.Level is { } known && open.TrueForAll(o => measures.Find(o.Code, state.Position)?.Bounds is null))
        {
            return [new(known, state.Excess ?? 0, state.Excess ?? 0)];
        }

        var capped = state.Fired.Where(fired => scheme.Caps.Any(cap => cap.Rule == fired.Rule)).Select(fired => fired.AtBest).DefaultIfEmpty(ProtectionLevel.High).Max();
        return Option.Worst(open.Select(o => Options(o, state, inputs)).Append([new(capped, 0, 0)]));
    }

    private List<Option> Options(Open open, RegionState state, IReadOnlyList<IReadOnlyList<string>> inputs)
    {
        var measure = measures.Find(open.Code, state.Position);
        if (measure?.Bounds is { } bounds)
        {
            return Option.Between(bounds.AtLeast ?? double.NegativeInfinity, bounds.AtMost ?? double.PositiveInfinity, open.Largest, open.Excess);
        }

        if (measure?.Value is { } value)
        {
            return Option.Between(value, value, open.Largest, open.Excess);
        }

        var missing = inputs.Any(group => group.Contains(open.Code) && group.All(code => measures.Value(code, state.Position) is null));
        return missing || open.Needed
            ? Option.Between(double.NegativeInfinity, double.PositiveInfinity, open.Largest, open.Excess)
            : [new(ProtectionLevel.High, 0, 0)];
    }

    /// <summary>The loads of a risk where they are measures and inputs, else the risk itself.</summary>
    private static IEnumerable<Open> Risk(RegionRule rule, RiskRule risk)
    {
        var excess = new ExcessRisk(risk, rule.Dummy);
        if (!risk.Curves.All(curve => rule.Inputs.Any(group => group.Contains(curve.Load))))
        {
            return [new(risk.Measure, level => level == ProtectionLevel.VeryLow ? double.PositiveInfinity : excess.Risk(risk.Bounds.Largest(level)), p => excess.Of(Math.Clamp(p, 0, 1)), Needed: true)];
        }

        return risk.Curves.Select(curve => new Open(
            curve.Load, level => Math.Min(excess.Load(curve, level), Limit(rule, curve.Load, level)), load => excess.Of(excess.ByCurve(curve, load))));
    }

    private static Open Measured(RatedMeasure measure, RegionRule rule) =>
        new(measure.Measure, level => Math.Min(measure.Bounds.Largest(level), Limit(rule, measure.Measure, level)), _ => 0);

    private static Open Limited(RegionRule rule, LimitRule limit) => new(limit.Measure, level => Limit(rule, limit.Measure, level), _ => 0);

    private static double Limit(RegionRule rule, string measure, ProtectionLevel level) =>
        rule.Limits.Where(limit => limit.Measure == measure && level < limit.AtBest).Select(limit => limit.Limit).DefaultIfEmpty(double.PositiveInfinity).Min();

    /// <summary>One measure of a region: where its levels end, and the excess risk of a value.</summary>
    private sealed record Open(string Code, Func<ProtectionLevel, double> Largest, Func<double, double> Excess, bool Needed = false);
}
