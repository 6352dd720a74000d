using Toepan.Api.Analysis.Classes;
using Toepan.Domain.Analysis;
using Toepan.Domain.Analysis.Explore;
using Toepan.Web.Charts;
using Toepan.Web.Components;
using Toepan.Web.Pages.Measures;

namespace Toepan.Web.Pages.Analysis;

/// <summary>A class comparison → its strips.</summary>
public static class ClassModels
{
    private const int MostLinks = 80;

    /// <param name="address">The page's address with one value of its query set.</param>
    public static IEnumerable<StripModel> Strips(ClassComparison comparison, Func<string, string?, string> address, UnitSystem units)
    {
        for (var column = 0; column < comparison.Measures.Count; column++)
        {
            yield return Strip(comparison, column, address, units);
        }
    }

    private static StripModel Strip(ClassComparison comparison, int column, Func<string, string?, string> address, UnitSystem units)
    {
        var measure = comparison.Measures[column];
        var unit = measure.Statistics.Unit;
        var factor = ExploreModels.Factor(unit, units);
        var links = comparison.Rows.Count <= MostLinks;
        var dots = comparison.Rows.Where(row => row.Row.Values[column] is not null).Select(row => new StripDot(
            row.Row.Values[column]!.Value * factor, $"{row.Row.Vehicle.Title}, {row.Row.Test}", links ? address("pick", row.Row.Vehicle.Key) : null,
            row.Row.Vehicle.Key == comparison.Query.Pick, row.Standing is MassStanding.NotComparable)).ToList();
        return new(MeasureWords.Title(measure.Statistics.Measure), ExploreModels.Unit(unit, units), Says(comparison, measure), dots)
        {
            Quartiles = measure.Statistics.Count < 4 ? null
                : (measure.Statistics.LowerQuartile!.Value * factor, measure.Statistics.Median!.Value * factor, measure.Statistics.UpperQuartile!.Value * factor),
            RepeatBand = measure.RepeatBand is { } band ? (band.From * factor, band.To * factor) : null,
            Limits = [.. measure.Limits.Select(limit => new PlotLimit(limit.Value * factor, limit.Label))],
        };
    }

    private static string Says(ClassComparison comparison, ComparedMeasure measure)
    {
        var statistics = measure.Statistics;
        var says = ExploreSentences.Of(
            new SampleStatistics(statistics.Count, statistics.Mean, statistics.Sd, statistics.Minimum, statistics.LowerQuartile, statistics.Median, statistics.UpperQuartile, statistics.Maximum),
            new(comparison.Table.Title.ToLowerInvariant(), "", statistics.Unit == "probability" ? "" : statistics.Unit, "", ""));
        return measure.RepeatBand is null ? says : says + " Shaded: where 95 of 100 repeated runs of the vehicle picked out would be expected.";
    }
}
