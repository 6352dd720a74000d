using System.Globalization;
using Toepan.Web.Components;

namespace Toepan.Web.Charts;

/// <summary>What the side view says in words beside its points.</summary>
/// <param name="Anchor">Where the leader ends.</param>
/// <param name="Title">The part.</param>
/// <param name="Figures">How far it moved.</param>
public sealed record SideLabel(SidePlace Anchor, string Title, string Figures);

/// <summary>Labels of the side view: footwell, pedal, steering wheel, knee panel and door opening, where measured.</summary>
public static class SideLabels
{
    public static IReadOnlyList<SideLabel> Of(SideView view, UnitSystem units)
    {
        var labels = new List<SideLabel>();
        Add(labels, view.Front.FirstOrDefault(p => p.Name == "windscreen-base"), "Windscreen base", units);
        Add(labels, view.KneePanel, "Knee panel", units);
        Add(labels, view.Footwell, "Footwell", units);
        if (view.Wheel is { } wheel)
        {
            labels.Add(new SideLabel(wheel.After, "Steering wheel", $"{Back(wheel, units)}, {Length(Math.Abs(wheel.Source.Upward), units)} {(wheel.Source.Upward < 0 ? "down" : "up")}"));
        }

        return labels;
    }

    /// <summary>A length with its unit, whole millimetres or tenths of an inch.</summary>
    public static string Length(double mm, UnitSystem units) => units == UnitSystem.Us
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Round(mm / 25.4, 1, MidpointRounding.AwayFromZero):F1} in")
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Round(mm, MidpointRounding.AwayFromZero):F0} mm");

    private static void Add(List<SideLabel> labels, SidePoint? point, string title, UnitSystem units)
    {
        if (point is not null)
        {
            labels.Add(new SideLabel(point.After, title, Back(point, units)));
        }
    }

    private static string Back(SidePoint point, UnitSystem units) =>
        $"{Length(Math.Abs(point.Source.Rearward), units)} {(point.Source.Rearward < 0 ? "forward" : "back")}";
}
