using Toepan.Domain.Channels;
using Toepan.Domain.Measures;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Analysis.Traces;

/// <summary>A window or instant that a stored measure marks on a trace.</summary>
/// <param name="Code">Measure code.</param>
/// <param name="Label">Short name, e.g. <c>HIC15</c>.</param>
/// <param name="Value">The measure.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="FromS">Start of the window or the instant, s.</param>
/// <param name="ToS">End of the window; equal to the start for an instant.</param>
/// <param name="Ordinate">The trace at the instant, in its unit; null for a window.</param>
public sealed record TraceMark(string Code, string Label, double Value, string Unit, double FromS, double ToS, double? Ordinate = null);

/// <summary>A limit drawn across a trace, in the trace's own sign.</summary>
/// <param name="Code">Measure it limits.</param>
/// <param name="Value">Ordinate, in the trace's unit.</param>
/// <param name="Label">Short name and figure's meaning.</param>
public sealed record TraceLimit(string Code, double Value, string Label);

/// <summary>
/// Which stored measures and which of a scheme's limits belong on a trace: those reduced from exactly its channels in the way it
/// combines them. Of windows those of HIC and of 3 ms are marked, and every instant of a peak in the trace's own unit (a risk read at it is no ordinate). Windows are shown at any filter class; limits and instants only at the class the measure is made of, because elsewhere the curve
/// is another one. A measure that reads a channel downwards (compression, deflection, slide) puts its limit below zero.
/// </summary>
public static class TraceSigns
{
    private static readonly string[] ReadDownwards =
        ["neck.compression", "neck.extension", "chest.deflection", "femur.left.compression", "femur.right.compression", "knee.left.slide", "knee.right.slide", "tibia.left.compression", "tibia.right.compression"];

    public static IReadOnlyList<TraceMark> Marks(Trace trace, string unit, IEnumerable<Measure> measures) =>
        [.. measures.Where(measure => measure is { Value: not null, FromS: not null } && Belongs(trace.Expression, measure)
                && (measure.ToS > measure.FromS ? HasWindow(measure.Code) : measure.Unit == unit && SameClass(trace.Expression, measure)))
            .Select(measure => new TraceMark(measure.Code, Short(measure.Code), measure.Value!.Value, measure.Unit, measure.FromS!.Value, Math.Max(measure.FromS.Value, measure.ToS ?? 0)))];

    public static IReadOnlyList<TraceLimit> Limits(Trace trace, string unit, IEnumerable<Measure> measures, Scheme scheme)
    {
        if (DummyOf(trace.Expression) is not { } dummy)
        {
            return [];
        }

        var limits = scheme.RegionsOf(dummy).SelectMany(rule => rule.Limits).ToLookup(limit => limit.Measure);
        return [.. measures.Where(measure => measure.Unit == unit && Belongs(trace.Expression, measure) && SameClass(trace.Expression, measure))
            .SelectMany(measure => limits[measure.Code].Take(1).Select(limit => new TraceLimit(measure.Code, Direction(trace.Expression, measure.Code) * limit.Limit, $"limit of {Short(measure.Code)}")))];
    }

    /// <summary>Short name of a measure, for the edge of a mark.</summary>
    public static string Short(string code) => code switch
    {
        _ when code.EndsWith(".hic15", StringComparison.Ordinal) => "HIC15",
        _ when code.EndsWith(".hic36", StringComparison.Ordinal) => "HIC36",
        _ when code.EndsWith(".a3ms", StringComparison.Ordinal) => "3 ms",
        _ when code.EndsWith(".peak", StringComparison.Ordinal) => "peak",
        _ => code[(code.LastIndexOf('.') + 1)..],
    };

    private static bool HasWindow(string code) => code is "head.hic15" or "head.hic36" || code.EndsWith(".a3ms", StringComparison.Ordinal);

    private static bool Belongs(TraceExpression expression, Measure measure)
    {
        var bare = Bare(expression);
        var combined = (bare as FunctionTrace)?.Function;
        var codes = bare.Channels.Select(channel => channel.Code).Order(StringComparer.Ordinal);
        return measure.Sources.Order(StringComparer.Ordinal).SequenceEqual(codes) && (bare is ChannelTrace || Combines(combined!, measure.Code));
    }

    private static bool Combines(TraceFunction function, string code) =>
        function == TraceFunction.Resultant ? code.EndsWith(".a3ms", StringComparison.Ordinal) || code is "head.hic15" or "head.hic36" or "head.peak"
        : function == TraceFunction.TibiaIndex ? code.EndsWith(".index", StringComparison.Ordinal)
        : function == TraceFunction.Condyle ? code is "neck.flexion" or "neck.extension"
        : function == TraceFunction.Mean && code.StartsWith("vehicle.", StringComparison.Ordinal);

    private static bool SameClass(TraceExpression expression, Measure measure) =>
        measure.FilterClass is null || expression.Channels.All(channel => channel.FilterClass == measure.FilterClass);

    private static int Direction(TraceExpression expression, string code) =>
        (ReadDownwards.Contains(code) ? -1 : 1) * (IsNegative(expression) ? -1 : 1);

    private static bool IsNegative(TraceExpression expression) =>
        expression is FunctionTrace { Arguments: [var inner] } function && function.Function == TraceFunction.Negative && !IsNegative(inner);

    private static TraceExpression Bare(TraceExpression expression) =>
        expression is FunctionTrace { Arguments: [var inner] } function && function.Function == TraceFunction.Negative ? Bare(inner) : expression;

    private static DummyType? DummyOf(TraceExpression expression) =>
        expression.Channels.Select(part => ChannelCode.TryParse(part.Code)?.Dummy).Distinct().ToArray() is [{ } only]
        && Enum.TryParse<DummyType>(only, out var dummy) && Enum.IsDefined(dummy) ? dummy : null;
}
