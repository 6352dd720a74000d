using System.Globalization;
using Toepan.Domain.Channels;

namespace Toepan.Domain.Analysis.Traces;

/// <summary>The samples that several signals share.</summary>
/// <param name="StartS">Time of the first shared sample, s.</param>
/// <param name="IntervalS">Sampling interval, s.</param>
/// <param name="Count">Number of shared samples, at least one.</param>
/// <param name="Offsets">Index of the first shared sample in each signal.</param>
internal sealed record SharedGrid(double StartS, double IntervalS, int Count, IReadOnlyList<int> Offsets)
{
    /// <summary>The shared samples, or null where <see cref="Disagreement"/> says why there are none.</summary>
    public static SharedGrid? Of(IReadOnlyList<TraceSignal> signals)
    {
        if (Disagreement(signals) is not null)
        {
            return null;
        }

        var (start, interval) = (signals[0].History.StartS, signals[0].History.IntervalS);
        var firsts = signals.Select(signal => Steps(signal, start, interval)).ToArray();
        var (from, to) = Range(signals, firsts);
        return new(start + (from * interval), interval, (int)(to - from + 1), [.. firsts.Select(first => (int)(from - first))]);
    }

    /// <summary>Why signals cannot be combined sample by sample, or null.</summary>
    public static string? Disagreement(IReadOnlyList<TraceSignal> signals)
    {
        var (start, interval) = (signals[0].History.StartS, signals[0].History.IntervalS);
        foreach (var history in signals.Skip(1).Select(signal => signal.History))
        {
            if (Math.Abs(history.IntervalS - interval) > SampleGrid.Tolerance * interval)
            {
                return $"the parts are sampled {Figure(interval)} s and {Figure(history.IntervalS)} s apart";
            }

            var steps = (history.StartS - start) / interval;
            if (Math.Abs(steps - Math.Round(steps)) > SampleGrid.Tolerance * Math.Max(1, Math.Abs(steps)))
            {
                return $"the parts start at {Figure(start)} s and {Figure(history.StartS)} s, which is no whole number of samples apart";
            }
        }

        var (from, to) = Range(signals, [.. signals.Select(signal => Steps(signal, start, interval))]);
        return to < from ? "the parts have no sample in common" : null;
    }

    private static long Steps(TraceSignal signal, double start, double interval) => (long)Math.Round((signal.History.StartS - start) / interval);

    private static (long From, long To) Range(IReadOnlyList<TraceSignal> signals, long[] firsts) =>
        (firsts.Max(), signals.Select((signal, i) => firsts[i] + signal.History.Count - 1).Min());

    private static string Figure(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
