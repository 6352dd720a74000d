using Toepan.Domain.Ratings;

namespace Toepan.Domain.Analysis.Repeats;

/// <summary>
/// The scatter of each measure: pooled over the programme's own repeat groups where at least three exist, else the scheme's default;
/// none where neither is known. Methods edition 1, "Repeats".
/// </summary>
public sealed class ScatterTable
{
    /// <summary>Repeat groups from which on the programme's own figure is used.</summary>
    public const int LeastGroups = 3;

    private static readonly string[] Displacements = ["structure.", "clearance.", "vehicle.crush."];

    private readonly RepeatabilityDefaults defaults;
    private readonly ILookup<string, RepeatGroup> groups;
    private readonly Func<string, double?> limitOf;

    private ScatterTable(RepeatabilityDefaults defaults, IEnumerable<RepeatGroup> groups, Func<string, double?> limitOf)
    {
        this.defaults = defaults;
        this.groups = groups.Where(group => group.Values.Count > 1).ToLookup(group => group.Code, StringComparer.Ordinal);
        this.limitOf = limitOf;
    }

    public static ScatterTable Of(Scheme scheme, IEnumerable<RepeatGroup> groups) => new(scheme.Repeatability, groups, new SchemeLimits(scheme).Any);

    /// <summary>Whether a measure is a displacement or distance of the structure, and scatters normally.</summary>
    public static bool IsDisplacement(string code) => Displacements.Any(start => code.StartsWith(start, StringComparison.Ordinal));

    /// <summary>The scatter of a measure, or null where none is known.</summary>
    public Scatter? Find(string code)
    {
        var kind = IsDisplacement(code) ? ScatterKind.Normal : ScatterKind.LogNormal;
        var own = groups[code]
            .Select(group => (group.Key, group.Values.Count, Size: Size(kind, code, group)))
            .Where(group => group.Size is not null)
            .ToList();
        var keys = own.Select(group => group.Key).Distinct().Count();
        if (keys >= LeastGroups && RepeatStatistics.Pooled(own.Select(group => (group.Count, group.Size!.Value))) is { } pooled)
        {
            return new(kind, pooled, $"pooled over {keys} repeat groups of this programme", keys);
        }

        return kind == ScatterKind.Normal ? new(kind, defaults.DisplacementStandardDeviationMm, defaults.Source, 0)
            : defaults.CoefficientOfVariation.TryGetValue(code, out var cv) ? new(kind, cv, defaults.Source, 0)
            : null;
    }

    private double? Size(ScatterKind kind, string code, RepeatGroup group)
    {
        var statistics = RepeatStatistics.Of(code, null, "", [.. group.Values.Select(value => (double?)value)], limitOf(code));
        return kind == ScatterKind.Normal ? statistics.Sd : statistics.Cv;
    }
}
