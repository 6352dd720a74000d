namespace Toepan.Domain.Ratings;

/// <summary>Which measures a scheme looks at.</summary>
public static class SchemeMeasures
{
    /// <summary>Every code that can change a level: inputs, loads, risks, rated measures, limits, structure.</summary>
    public static IReadOnlySet<string> Of(Scheme scheme) => scheme.Regions
        .SelectMany(rule => rule.Inputs.SelectMany(group => group)
            .Concat(rule.Measures.Select(measure => measure.Measure))
            .Concat(rule.Limits.Select(limit => limit.Measure))
            .Concat(rule.Risk is { } risk ? risk.Curves.Select(curve => curve.Load).Append(risk.Measure) : []))
        .Concat(scheme.Structure.Inputs.SelectMany(group => group))
        .Concat(scheme.Structure.Measures.Select(measure => measure.Measure))
        .ToHashSet(StringComparer.Ordinal);
}
