using Toepan.Domain.Analysis.Traces;

namespace Toepan.Api.Analysis.Traces;

/// <summary>One trace of a view.</summary>
/// <param name="Trace">What was asked.</param>
/// <param name="Signal">The whole record in full, before any shift; null when absent.</param>
/// <param name="Absent">Why there is none, or null.</param>
/// <param name="Marks">Windows and peaks of stored measures on it.</param>
/// <param name="Limits">Limits that apply to it.</param>
public sealed record ViewedTrace(Trace Trace, TraceSignal? Signal, string? Absent, IReadOnlyList<TraceMark> Marks, IReadOnlyList<TraceLimit> Limits)
{
    public double ShiftS => Trace.ShiftMs / 1000;
}

/// <summary>The traces of a view over one window.</summary>
public sealed record TraceSet(double FromS, double ToS, int Columns, IReadOnlyList<ViewedTrace> Traces)
{
    /// <summary>What of a trace is drawn in the window.</summary>
    public ReducedTrace Reduce(ViewedTrace trace) =>
        ColumnReduction.Reduce(trace.Signal!.History, FromS - trace.ShiftS, ToS - trace.ShiftS, Columns);
}

/// <summary>The samples of one trace next to the instants asked: time with the trace's shift, s, and value; null where there is no finite one.</summary>
public sealed record TraceValues(string Trace, string Unit, IReadOnlyList<double?> Times, IReadOnlyList<double?> Values, string? Absent);
