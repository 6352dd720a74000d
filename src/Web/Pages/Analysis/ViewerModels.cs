using Toepan.Api.Analysis.Traces;
using Toepan.Domain.Analysis.Traces;
using Toepan.Web.Charts;
using Toepan.Web.Components;

namespace Toepan.Web.Pages.Analysis;

/// <summary>A view as drawings: one plot for each unit, or for each trace.</summary>
public sealed class ViewerModels(TraceSet set, UnitSystem units)
{
    private sealed record Drawn(ViewedTrace Trace, Series Line);

    public IReadOnlyList<PlotModel> Plots(bool each)
    {
        var drawn = set.Traces.Select((trace, i) => trace.Signal is null ? null : new Drawn(trace, Line(trace, i))).OfType<Drawn>();
        return [.. drawn.GroupBy(one => each ? one.Trace.Trace.ToString() : one.Trace.Signal!.Unit).Select(group => Plot([.. group]))];
    }

    private PlotModel Plot(IReadOnlyList<Drawn> traces)
    {
        var unit = traces[0].Trace.Signal!.Unit;
        var shown = DisplayUnits.Show(1, unit, units).Unit;
        var marks = traces.SelectMany(one => one.Trace.Marks).ToList();
        var names = string.Join("; ", traces.Select(one => one.Line.Label).Distinct());
        return new PlotModel
        {
            Title = traces.Count == 1 ? names : shown.Length > 0 ? $"Traces in {shown}" : "Traces without unit",
            YLabel = shown,
            Series = [.. traces.Select(one => one.Line)],
            Bands = [.. marks.Where(mark => mark.ToS > mark.FromS && Visible(mark)).Select(mark => new PlotBand(Math.Max(mark.FromS, set.FromS) * 1000, Math.Min(mark.ToS, set.ToS) * 1000, mark.Label))],
            Marks = [.. marks.Where(mark => mark.Ordinate is not null && Visible(mark)).Select(mark => new PlotMark(mark.FromS * 1000, mark.Ordinate!.Value * DisplayUnits.Factor(unit, units), Text(mark)))],
            Limits = [.. traces.SelectMany(one => one.Trace.Limits).Select(limit => new PlotLimit(limit.Value * DisplayUnits.Factor(unit, units), limit.Label)).Distinct()],
            Says = $"{(traces.Count == 1 ? "" : $"{names}. ")}{string.Join("; ", marks.Select(Text).Distinct())}".TrimEnd() is { Length: > 0 } says ? says : "No stored measure marks it.",
            XRange = (set.FromS * 1000, set.ToS * 1000),
        };
    }

    private bool Visible(TraceMark mark) => mark.ToS >= set.FromS && mark.FromS <= set.ToS;

    private string Text(TraceMark mark)
    {
        var shown = DisplayUnits.Show(mark.Value, mark.Unit, units);
        return $"{mark.Label} {shown.Number} {shown.Unit}".Trim();
    }

    private Series Line(ViewedTrace trace, int index)
    {
        var reduced = set.Reduce(trace);
        var factor = DisplayUnits.Factor(trace.Signal!.Unit, units);
        var width = (set.ToS - set.FromS) / set.Columns;
        Func<int, double> time = reduced.Reduced
            ? i => set.FromS + (((i / 2) + (i % 2 == 0 ? 0.25 : 0.75)) * width)
            : i => reduced.FirstS + trace.ShiftS + (i * trace.Signal.History.IntervalS);
        return new Series(
            TraceWords.Of(trace.Trace), [.. reduced.Values.Select((_, i) => time(i) * 1000)], [.. reduced.Values.Select(value => value * factor)], Tones.At(index));
    }
}
