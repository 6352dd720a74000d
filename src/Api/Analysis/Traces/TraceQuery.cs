using Toepan.Domain.Analysis.Traces;

namespace Toepan.Api.Analysis.Traces;

/// <summary>Which traces, over which window, for how many pixel columns.</summary>
/// <param name="Traces">The traces, in order.</param>
/// <param name="FromS">Window from, s; null = where the first trace begins.</param>
/// <param name="ToS">Window to, s; null = where the last trace ends.</param>
/// <param name="Columns">Pixel columns.</param>
/// <param name="Marks">Whether windows, peaks and limits are wanted too.</param>
public sealed record TraceQuery(IReadOnlyList<Trace> Traces, double? FromS, double? ToS, int Columns = TraceQuery.UsualColumns, bool Marks = true)
{
    public const int MostTraces = 24;
    public const int LeastColumns = 10;
    public const int MostColumns = 4000;
    public const int UsualColumns = 1000;

    /// <summary>Reads and checks; the first thing wrong is the refusal.</summary>
    public static Outcome<TraceQuery> Read(IReadOnlyList<string> texts, double? fromS, double? toS, int? columns = null, bool? marks = null)
    {
        if (texts.Count is 0 or > MostTraces)
        {
            return Failure.BadRequest($"There are {texts.Count} traces (t); 1 to {MostTraces} are shown at once.");
        }

        if (columns is < LeastColumns or > MostColumns)
        {
            return Failure.BadRequest($"columns is {columns}; it is {LeastColumns} to {MostColumns}.");
        }

        if ((fromS is { } from && !double.IsFinite(from)) || (toS is { } to && !double.IsFinite(to)) || fromS >= toS)
        {
            return Failure.BadRequest(FormattableString.Invariant($"from is {fromS} s, to is {toS} s; both are finite times and from is before to."));
        }

        var traces = new List<Trace>(texts.Count);
        foreach (var text in texts)
        {
            var reading = TraceParser.Read(text);
            if (reading.Trace is not { } trace)
            {
                return Failure.BadRequest(reading.Error!);
            }

            traces.Add(trace);
        }

        return new TraceQuery(traces, fromS, toS, columns ?? UsualColumns, marks ?? true);
    }
}
