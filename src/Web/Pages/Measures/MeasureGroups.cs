using Toepan.Domain.Measures;

namespace Toepan.Web.Pages.Measures;

/// <summary>Measures under one heading, in the reducer's order.</summary>
public sealed record MeasureGroup(string Title, IReadOnlyList<Measure> Measures);

/// <summary>Which heading a measure stands under. Displacements of single points stand in the structure table instead.</summary>
public static class MeasureGroups
{
    private static readonly (string Title, string[] Stems)[] Order =
    [
        ("Head", ["head"]),
        ("Neck", ["neck"]),
        ("Chest", ["chest"]),
        ("Pelvis", ["pelvis"]),
        ("Thighs and knees", ["femur", "knee"]),
        ("Lower legs and feet", ["tibia", "foot"]),
        ("Risk by the published curves", ["risk"]),
        ("Pulse", ["vehicle"]),
        ("Structure", ["structure"]),
        ("Residual space", ["clearance"]),
        ("Conduct", ["conduct"]),
    ];

    private static readonly HashSet<string> StructureSummaries =
        new(StringComparer.Ordinal) { "structure.footwell.rearward", "structure.opening.closure", "structure.alignment.rms" };

    /// <summary>The groups of one seat position (null = the vehicle); empty groups are left out, unknown stems come last.</summary>
    public static IReadOnlyList<MeasureGroup> Of(IEnumerable<Measure> measures, int? position)
    {
        var shown = measures.Where(m => m.Position == position && !IsSinglePoint(m.Code)).ToList();
        var known = Order.SelectMany(group => group.Stems).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. Order.Select(group => new MeasureGroup(group.Title, [.. shown.Where(m => group.Stems.Contains(Stem(m.Code)))])),
            .. shown.Where(m => !known.Contains(Stem(m.Code))).GroupBy(m => Stem(m.Code)).Select(g => new MeasureGroup(g.Key, [.. g])),
        ];
    }

    private static bool IsSinglePoint(string code) =>
        code.StartsWith("structure.", StringComparison.Ordinal) && !StructureSummaries.Contains(code);

    private static string Stem(string code) => code.Split('.')[0];
}
