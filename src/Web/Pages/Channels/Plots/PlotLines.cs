using Toepan.Domain.Channels;
using Toepan.Domain.Measures;
using Toepan.Web.Charts;

namespace Toepan.Web.Pages.Channels.Plots;

/// <summary>Time histories as lines of a plot, and the measures that point into them.</summary>
public static class PlotLines
{
    private const int Points = 600;

    /// <summary>A line over milliseconds, thinned so that no peak is lost.</summary>
    public static Series Of(string label, TimeHistory history, Tone tone, double factor = 1)
    {
        var kept = PlotReduction.Indices(history.Values.Span, Points);
        var values = history.Values;
        return new Series(
            label, Array.ConvertAll(kept, i => history.TimeAt(i) * 1000), Array.ConvertAll(kept, i => values.Span[i] * factor), tone);
    }

    /// <summary>Direction of a channel: the 15th character of its code.</summary>
    public static string Direction(string code) => code.Length == 16 ? code.Substring(14, 1) : "";

    /// <summary>Dimension and direction of a channel, e.g. <c>MOY</c>.</summary>
    public static string Component(string code) => code.Length == 16 ? code.Substring(12, 3) : "";

    /// <summary>The codes among a measure's sources that are channels.</summary>
    public static IReadOnlyList<string> Channels(Measure? measure) => measure is null ? [] : [.. measure.Sources.Where(source => source.Length == 16)];

    public static (double From, double To) WholeMs { get; } = (0, PlotSignals.EndS * 1000);
}
