using Toepan.Web.Components;

namespace Toepan.Web.Pages.Analysis;

/// <summary>Ready choices of measures that fit one table.</summary>
public static class MeasureSets
{
    private static readonly (string Key, string Title, string[] Codes)[] Sets =
    [
        ("head-to-chest", "head, neck, chest", ["head.hic15", "head.a3ms", "neck.nij", "neck.tension", "chest.deflection", "chest.viscous"]),
        ("legs", "thighs and lower legs", ["femur.left.compression", "femur.right.compression", "tibia.left.upper.index", "tibia.right.upper.index", "tibia.left.compression", "tibia.right.compression"]),
        ("structure", "structure and pulse", ["structure.footwell.rearward", "structure.opening.closure", "vehicle.deltav", "vehicle.peak", "vehicle.olc", "vehicle.stroke"]),
    ];

    public static IReadOnlyList<Choice> Choices { get; } = [.. Sets.Select(set => new Choice(set.Key, set.Title))];

    /// <summary>The codes of a set; the first set where the key is unknown.</summary>
    public static IReadOnlyList<string> Codes(string? key) => Sets.FirstOrDefault(set => set.Key == key, Sets[0]).Codes;
}
