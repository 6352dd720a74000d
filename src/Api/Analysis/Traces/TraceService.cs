using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages;
using Toepan.Api.Programme;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Analysis.Traces;
using Toepan.Domain.Channels;
using Toepan.Domain.Measures;

namespace Toepan.Api.Analysis.Traces;

/// <summary>The traces of the channel viewer: any channels of any runs, combined and filtered on the fly, in one answer.</summary>
public sealed class TraceService(IDbContextFactory<ProgrammeDb> contexts, TraceCache cache, ProgrammeRules rules)
{
    /// <summary>Most instants in one question for values.</summary>
    public const int MostInstants = 10;

    /// <summary>Every trace of the query. An unknown run refuses the whole; a channel that is missing or unfit makes its trace absent with the reason.</summary>
    public async Task<Outcome<TraceSet>> Get(Viewer viewer, TraceQuery query, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var channels = new TraceChannels(context, cache);
        if (await channels.Load(query.Traces, cancellation) is { } unknown)
        {
            return unknown;
        }

        var measures = query.Marks ? await Measures(context, query, channels, cancellation) : [];
        var evaluator = new TraceEvaluator(channels.Of);
        var traces = query.Traces.Select(trace => View(trace, evaluator, measures)).ToList();
        var (from, to) = Window(query, traces);
        return new TraceSet(from, to, query.Columns, traces);
    }

    /// <summary>The samples nearest to some instants, s, in full precision: what a cursor reads.</summary>
    public async Task<Outcome<IReadOnlyList<TraceValues>>> Values(
        Viewer viewer, TraceQuery query, IReadOnlyList<double> instants, CancellationToken cancellation = default)
    {
        if (instants.Count is 0 or > MostInstants || instants.Any(at => !double.IsFinite(at)))
        {
            return Failure.BadRequest($"There are {instants.Count} instants (at); 1 to {MostInstants} finite times in s are answered at once.");
        }

        var found = await Get(viewer, query with { Marks = false }, cancellation);
        return found.Value is { } set ? Outcome.List<TraceValues>([.. set.Traces.Select(trace => At(trace, instants))]) : found.Failure!;
    }

    private ViewedTrace View(Trace trace, TraceEvaluator evaluator, Dictionary<string, List<Measure>> measures)
    {
        var answer = evaluator.Evaluate(trace.Expression);
        var own = answer.Signal is not null && trace.OnlyTest is { } test && measures.TryGetValue(test, out var found) ? found : [];
        var shift = trace.ShiftMs / 1000;
        return new ViewedTrace(
            trace, answer.Signal, answer.Absent,
            [.. TraceSigns.Marks(trace, answer.Signal?.Unit ?? "", own).Select(mark => Placed(mark, answer.Signal!.History, shift))],
            answer.Signal is { } signal ? TraceSigns.Limits(trace, signal.Unit, own, rules.DefaultScheme) : []);
    }

    private static TraceMark Placed(TraceMark mark, TimeHistory history, double shiftS)
    {
        var at = SampleGrid.Between(history, mark.FromS, double.MaxValue);
        double? ordinate = mark.ToS > mark.FromS || at.Count == 0 ? null : history.Values.Span[at.First];
        return mark with { FromS = mark.FromS + shiftS, ToS = mark.ToS + shiftS, Ordinate = ordinate };
    }

    private static async Task<Dictionary<string, List<Measure>>> Measures(
        ProgrammeDb context, TraceQuery query, TraceChannels channels, CancellationToken cancellation)
    {
        var measures = new Dictionary<string, List<Measure>>(StringComparer.Ordinal);
        foreach (var test in query.Traces.Select(trace => trace.OnlyTest).OfType<string>().Distinct())
        {
            measures[test] = await CurrentRun.ReadMeasures(context, channels.Runs[test].ReductionId, cancellation);
        }

        return measures;
    }

    private static (double From, double To) Window(TraceQuery query, List<ViewedTrace> traces)
    {
        var drawn = traces.Where(trace => trace.Signal is { History.Count: > 0 }).ToList();
        var from = query.FromS ?? (drawn.Count > 0 ? drawn.Min(trace => trace.Signal!.History.StartS + trace.ShiftS) : SampleGrid.WindowFromS);
        var to = query.ToS ?? (drawn.Count > 0 ? drawn.Max(trace => trace.Signal!.History.TimeAt(trace.Signal.History.Count - 1) + trace.ShiftS) : SampleGrid.WindowToS);
        return (from, to > from ? to : from + SampleGrid.WindowToS);
    }

    private static TraceValues At(ViewedTrace trace, IReadOnlyList<double> instants)
    {
        if (trace.Signal is not { } signal)
        {
            return new(trace.Trace.ToString(), "", [], [], trace.Absent);
        }

        var history = signal.History;
        var found = instants.Select(at => (int)Math.Clamp(Math.Round((at - trace.ShiftS - history.StartS) / history.IntervalS), -1, history.Count))
            .Select(i => i >= 0 && i < history.Count && double.IsFinite(history.Values.Span[i]) ? i : (int?)null).ToList();
        return new(
            trace.Trace.ToString(), signal.Unit,
            [.. found.Select(i => i is { } index ? Math.Round(history.TimeAt(index) + trace.ShiftS, 12) : (double?)null)],
            [.. found.Select(i => i is { } index ? history.Values.Span[index] : (double?)null)], null);
    }
}
