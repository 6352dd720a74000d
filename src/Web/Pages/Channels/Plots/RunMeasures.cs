using Toepan.Domain.Measures;
using Toepan.Web.Components;

namespace Toepan.Web.Pages.Channels.Plots;

/// <summary>The measures of a run as captions quote them.</summary>
public sealed class RunMeasures(IReadOnlyList<Measure> measures)
{
    public Measure? Vehicle(string code) => At(code, null);

    public Measure? At(string code, int? position) => measures.FirstOrDefault(m => m.Code == code && m.Position == position);

    /// <summary>"31.2 g", or "absent".</summary>
    public string Say(string code, int? position, UnitSystem units) =>
        At(code, position) is { Value: { } value } measure ? Text(value, measure.Unit, units) : "absent";

    public static string Text(double value, string unit, UnitSystem units)
    {
        var shown = DisplayUnits.Show(value, unit, units);
        return $"{shown.Number} {shown.Unit}".Trim();
    }
}
