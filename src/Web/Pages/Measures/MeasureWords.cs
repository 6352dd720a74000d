using System.Globalization;
using Toepan.Domain.Measures;

namespace Toepan.Web.Pages.Measures;

/// <summary>Measures in words.</summary>
public static class MeasureWords
{
    /// <summary>The catalogue's title with the point or clearance it is about; a code the catalogue does not know stays a code.</summary>
    public static string Title(string code) => MeasureCatalogue.Title(code);

    /// <summary>"at 71.2 ms", "68.0 to 83.0 ms", or nothing for a measure without a time.</summary>
    public static string Window(Measure measure) => (measure.FromS, measure.ToS) switch
    {
        ({ } from, { } to) when Milliseconds(from) == Milliseconds(to) => $"at {Milliseconds(from)} ms",
        ({ } from, { } to) => $"{Milliseconds(from)} to {Milliseconds(to)} ms",
        ({ } from, null) => $"at {Milliseconds(from)} ms",
        _ => "",
    };

    /// <summary>Risks are shown in per cent, everything else in its own unit.</summary>
    public static string DisplayUnit(Measure measure) =>
        measure.Code.StartsWith("risk.", StringComparison.Ordinal) ? "probability" : measure.Unit;

    /// <summary>An id for the page: the code and the seat.</summary>
    public static string Id(Measure measure) =>
        string.Create(CultureInfo.InvariantCulture, $"about-{measure.Code.Replace('.', '-')}-{measure.Position ?? 0}");

    private static string Milliseconds(double seconds) => (seconds * 1000).ToString("0.0#", CultureInfo.InvariantCulture);
}
