using System.Globalization;

namespace Toepan.Web.Charts;

/// <summary>A shape for each group, so that colour never stands alone: circle, square, triangle, diamond, cross …, then again.</summary>
public static class ScatterShape
{
    private const int Shapes = 5;

    /// <summary>SVG path about a centre with a radius in pixels.</summary>
    public static string Path(int group, double x, double y, double r) => (group % Shapes) switch
    {
        0 => Text($"M{x - r:0.#} {y:0.#}a{r:0.#} {r:0.#} 0 1 0 {2 * r:0.#} 0a{r:0.#} {r:0.#} 0 1 0 {-2 * r:0.#} 0Z"),
        1 => Text($"M{x - (0.88 * r):0.#} {y - (0.88 * r):0.#}h{1.76 * r:0.#}v{1.76 * r:0.#}h{-1.76 * r:0.#}Z"),
        2 => Text($"M{x:0.#} {y - (1.15 * r):0.#}L{x + (1.05 * r):0.#} {y + (0.75 * r):0.#}H{x - (1.05 * r):0.#}Z"),
        3 => Text($"M{x:0.#} {y - (1.25 * r):0.#}l{1.1 * r:0.#} {1.25 * r:0.#}l{-1.1 * r:0.#} {1.25 * r:0.#}l{-1.1 * r:0.#} {-1.25 * r:0.#}Z"),
        _ => Text($"M{x - r:0.#} {y - r:0.#}L{x + r:0.#} {y + r:0.#}M{x - r:0.#} {y + r:0.#}L{x + r:0.#} {y - r:0.#}"),
    };

    /// <summary>CSS classes of the group's tone.</summary>
    public static string Class(int group) => $"scatter-dot {Tones.Class(group)}";

    private static string Text(FormattableString path) => path.ToString(CultureInfo.InvariantCulture);
}
