using Toepan.Domain.Channels;
using Toepan.Domain.Measures.Injury;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Analysis.Traces;

/// <summary>
/// Works out a trace over the whole record. Channels come ready (working unit, offset removed, filtered); functions combine sample by
/// sample and filter nothing again. Signals are combined on the samples they share: their intervals must agree and their starts differ by whole
/// intervals, both within 1e-6 of an interval; otherwise there is no answer, never an interpolated one. NaN stays NaN.
/// </summary>
public sealed class TraceEvaluator(Func<ChannelTrace, TraceAnswer> channel)
{
    private const double NmPerKnM = 1000;
    private delegate double SampleRule(ReadOnlySpan<double> values);

    public TraceAnswer Evaluate(TraceExpression expression) => expression switch
    {
        ChannelTrace one => channel(one),
        FunctionTrace function => Evaluate(function),
        _ => throw new ArgumentOutOfRangeException(nameof(expression), expression, "Unknown kind of trace."),
    };

    private TraceAnswer Evaluate(FunctionTrace trace)
    {
        var signals = new List<TraceSignal>(trace.Arguments.Count);
        foreach (var argument in trace.Arguments)
        {
            var answer = Evaluate(argument);
            if (answer.Signal is not { } signal)
            {
                return answer;
            }

            signals.Add(signal);
        }

        return trace.Function == TraceFunction.Integral ? Integrate(signals[0], trace.Number ?? 0) : Combine(trace, signals);
    }

    private static TraceAnswer Combine(FunctionTrace trace, List<TraceSignal> signals)
    {
        if (UnitProblem(trace, signals) is { } units)
        {
            return new(null, units);
        }

        if (SharedGrid.Of(signals) is not { } grid)
        {
            return new(null, $"{trace}: {SharedGrid.Disagreement(signals)}");
        }

        var (rule, unit) = Rule(trace, signals);
        var values = new double[grid.Count];
        Span<double> at = stackalloc double[signals.Count];
        for (var i = 0; i < values.Length; i++)
        {
            for (var k = 0; k < at.Length; k++)
            {
                at[k] = signals[k].History.Values.Span[grid.Offsets[k] + i];
            }

            values[i] = rule(at);
        }

        return new(new TraceSignal(new TimeHistory(grid.StartS, grid.IntervalS, values), unit), null);
    }

    private static (SampleRule Rule, string Unit) Rule(FunctionTrace trace, List<TraceSignal> signals)
    {
        var (function, unit) = (trace.Function, signals[0].Unit);
        if (function == TraceFunction.Condyle || function == TraceFunction.TibiaIndex)
        {
            var dummy = DummyConstants.Of(Dummy(trace)!.Value);
            return function == TraceFunction.Condyle
                ? (v => v[0] - (dummy.CondyleOffsetM * v[1] * NmPerKnM), unit)
                : (v => (Math.Sqrt((v[0] * v[0]) + (v[1] * v[1])) / dummy.TibiaMomentNm) + (Math.Abs(v[2]) / dummy.TibiaForceKn), "");
        }

        var factor = trace.Number ?? 1;
        SampleRule rule = function == TraceFunction.Resultant ? Root
            : function == TraceFunction.Difference ? v => v[0] - v[1]
            : function == TraceFunction.Sum ? Sum
            : function == TraceFunction.Mean ? v => Sum(v) / v.Length
            : function == TraceFunction.Negative ? v => -v[0]
            : v => v[0] * factor;
        return (rule, unit);
    }

    private static double Root(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value * value;
        }

        return Math.Sqrt(sum);
    }

    private static double Sum(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value;
        }

        return sum;
    }

    private static string? UnitProblem(FunctionTrace trace, List<TraceSignal> signals)
    {
        string[]? wanted = trace.Function == TraceFunction.Condyle ? ["N·m", "kN"] : trace.Function == TraceFunction.TibiaIndex ? ["N·m", "N·m", "kN"] : null;
        if (wanted is not null)
        {
            return !signals.Select(signal => signal.Unit).SequenceEqual(wanted) ? $"{trace}: takes {string.Join(", ", wanted)}, given {Units(signals)}"
                : Dummy(trace) is null ? $"{trace}: its channels do not name one dummy, H3 or HF" : null;
        }

        return signals.Any(signal => signal.Unit != signals[0].Unit) ? $"{trace}: the units differ: {Units(signals)}" : null;
    }

    private static string Units(List<TraceSignal> signals) => string.Join(", ", signals.Select(signal => signal.Unit.Length == 0 ? "no unit" : signal.Unit));

    /// <summary>The dummy that every channel's code names.</summary>
    private static DummyType? Dummy(TraceExpression trace)
    {
        var named = trace.Channels.Select(part => ChannelCode.TryParse(part.Code)?.Dummy).Distinct().ToArray();
        return named is [{ } only] && Enum.TryParse<DummyType>(only, out var dummy) && Enum.IsDefined(dummy) ? dummy : null;
    }

    private static TraceAnswer Integrate(TraceSignal signal, double atContact)
    {
        var history = signal.History;
        var (unit, factor) = IntegralUnit(signal.Unit);
        var values = Integral.Cumulative(history.Values.Span, history.IntervalS);
        var contact = SampleGrid.Between(history, SampleGrid.WindowFromS, double.MaxValue);
        var zero = contact.Count > 0 ? values[contact.First] : 0;
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = ((values[i] - zero) * factor) + atContact;
        }

        return new(new TraceSignal(history with { Values = values }, unit), null);
    }

    /// <summary>Unit of the integral over seconds, and the factor that brings it there.</summary>
    private static (string Unit, double Factor) IntegralUnit(string unit) => unit switch
    {
        "g" => ("m/s", WorkingUnits.StandardGravity),
        "m/s" => ("mm", 1000),
        "rad/s" => ("deg", 180 / Math.PI),
        "rad/s²" => ("rad/s", 1),
        "" => ("s", 1),
        _ => ($"{unit}·s", 1),
    };
}
