using System.Globalization;
using Toepan.Api.Analysis.Explore;
using Toepan.Domain.Analysis;
using Toepan.Domain.Analysis.Explore;
using Toepan.Web.Charts;
using Toepan.Web.Components;

namespace Toepan.Web.Pages.Analysis;

/// <summary>Answers → what is drawn, in the reader's units.</summary>
public static class ExploreModels
{
    private const double LeastRadius = 3;
    private const double MoreRadius = 5;
    private const int MostLinks = 60;

    /// <summary>Two measures; colour and shape by class, size by mass.</summary>
    public static ScatterModel Scatter(ExploreAnswer answer, string? pick, UnitSystem units)
    {
        var (fx, fy) = (Factor(answer.XUnit, units), Factor(answer.YUnit ?? "", units));
        var model = Plot(answer, pick, point => point.X * fx, point => point.Y * fy);
        var lines = new List<ScatterLine>();
        if (answer.Relation?.Line is { } line)
        {
            lines.Add(new(line.Slope * fy / fx, line.Intercept * fy, "least squares", false));
        }

        if (answer.Relation?.Robust is { } robust)
        {
            lines.Add(new(robust.Slope * fy / fx, robust.Intercept * fy, "Theil–Sen", true));
        }

        return model with
        {
            Title = $"{answer.YTitle} against {Lower(answer.XTitle)}", XLabel = Label(answer.XTitle, answer.XUnit, units), YLabel = Label(answer.YTitle ?? "", answer.YUnit ?? "", units),
            Lines = lines, Says = answer.Sentence + (lines.Count > 0 ? " Solid: least squares; dashed: Theil–Sen, which wild values do not move. Size is mass." : ""),
        };
    }

    /// <summary>The first measure over model years.</summary>
    public static ScatterModel Trend(ExploreAnswer answer, string? pick, UnitSystem units)
    {
        var factor = Factor(answer.XUnit, units);
        var model = Plot(answer, pick, point => point.ModelYear!.Value, point => point.X * factor);
        return model with
        {
            Title = $"{answer.XTitle} over model years", XLabel = "first model year", YLabel = Label(answer.XTitle, answer.XUnit, units), Says = answer.Sentence,
            Lines = answer.Trend?.Line is { } line ? [new(line.Slope * factor, line.Intercept * factor, "least squares", false)] : [],
        };
    }

    /// <summary>A strip for each group, all with the same axis because all hold the same limits of value.</summary>
    public static IEnumerable<StripModel> Groups(ExploreAnswer answer, string? pick, UnitSystem units)
    {
        var factor = Factor(answer.XUnit, units);
        var range = (From: answer.Points.Min(point => point.X) * factor, To: answer.Points.Max(point => point.X) * factor);
        foreach (var group in answer.Groups!.Each)
        {
            var points = answer.Points.Where(point => point.Group == group.Name).ToList();
            yield return new(group.Name, Unit(answer.XUnit, units), ExploreSentences.Of(group.Statistics, new("runs", answer.XTitle, answer.XUnit, "", "")),
                [.. points.Select(point => new StripDot(point.X * factor, Name(point), points.Count <= MostLinks && !point.Summary ? $"/tests/{point.Test}" : null, point.Vehicle == pick, point.Summary))])
            {
                Quartiles = Quartiles(group.Statistics, factor), Range = range,
            };
        }
    }

    public static IReadOnlyList<HistogramBin> Bins(ExploreAnswer answer, UnitSystem units)
    {
        var factor = Factor(answer.XUnit, units);
        return [.. answer.Bins!.Select(bin => bin with { From = bin.From * factor, To = bin.To * factor })];
    }

    /// <summary>A unit as the reader chose it; probabilities in per cent.</summary>
    public static string Unit(string unit, UnitSystem units) => DisplayUnits.Show(1, unit, units).Unit;

    public static double Factor(string unit, UnitSystem units) => unit == "probability" ? 100 : DisplayUnits.Factor(unit, units);

    public static (double, double, double)? Quartiles(SampleStatistics statistics, double factor) =>
        statistics.Count < 4 ? null : (statistics.LowerQuartile!.Value * factor, statistics.Median!.Value * factor, statistics.UpperQuartile!.Value * factor);

    private static ScatterModel Plot(ExploreAnswer answer, string? pick, Func<ExplorePoint, double> x, Func<ExplorePoint, double> y)
    {
        var groups = answer.Points.Select(point => point.ClassTitle).Distinct().Order(StringComparer.Ordinal).ToList();
        var masses = answer.Points.Where(point => point.MassKg is > 0).Select(point => point.MassKg!.Value).ToList();
        var (least, span) = masses.Count == 0 ? (0, 0) : (masses.Min(), masses.Max() - masses.Min());
        return new("", "", "", "",
            [.. answer.Points.Select(point => new ScatterPoint(x(point), y(point), groups.IndexOf(point.ClassTitle), Radius(point.MassKg), Name(point), point.Vehicle == pick))],
            groups);

        double Radius(double? mass) => span > 0 && mass is { } kilograms ? LeastRadius + (MoreRadius * (kilograms - least) / span) : LeastRadius + 1;
    }

    private static string Name(ExplorePoint point) => $"{point.Title}, {point.Test}" + (point.Summary ? ", summary" : "");

    private static string Label(string title, string unit, UnitSystem units) =>
        Unit(unit, units) is { Length: > 0 } shown ? string.Create(CultureInfo.InvariantCulture, $"{title}, {shown}") : title;

    private static string Lower(string title) => title.Length > 1 && char.IsUpper(title[1]) ? title : char.ToLowerInvariant(title[0]) + title[1..];
}
