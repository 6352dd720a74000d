using System.Globalization;
using System.Text;
using Toepan.Domain.Channels;

namespace Toepan.Api.Analysis.Traces;

/// <summary>
/// The window of a view as text/csv, every sample, shortest round-trip digits. Where all traces share their instants: <c>time [s]</c> and a column a trace;
/// else each trace has a time column of its own before it. A missing sample is empty. Absent traces are left out.
/// </summary>
public static class TraceCsv
{
    private const int TimeDecimals = 12;

    private sealed record Column(string Name, TimeHistory History, double ShiftS, SampleRange Range)
    {
        public double TimeAt(int row) => Math.Round(History.TimeAt(Range.First + row) + ShiftS, TimeDecimals) + 0.0;
    }

    public static async Task Write(TraceSet set, Stream stream, CancellationToken cancellation)
    {
        await using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true);
        var columns = set.Traces.Where(trace => trace.Signal is not null).Select(trace => Cut(set, trace)).ToList();
        var shared = columns.All(column => SameInstants(column, columns[0]));
        var head = columns.SelectMany((column, i) => shared && i > 0 ? [column.Name] : new[] { shared ? "time [s]" : $"time of {i + 1} [s]", column.Name });
        await writer.WriteAsync(string.Join(',', head.Select(Quoted)) + "\n");
        var line = new StringBuilder();
        for (var row = 0; row < columns.Select(column => column.Range.Count).DefaultIfEmpty().Max(); row++)
        {
            cancellation.ThrowIfCancellationRequested();
            line.Clear();
            for (var i = 0; i < columns.Count; i++)
            {
                Append(line, columns[i], row, withTime: !shared || i == 0, first: i == 0);
            }

            await writer.WriteAsync(line.Append('\n'), cancellation);
        }
    }

    private static Column Cut(TraceSet set, ViewedTrace trace) => new(
        $"{trace.Trace} [{trace.Signal!.Unit}]", trace.Signal.History, trace.ShiftS,
        SampleGrid.Between(trace.Signal.History, set.FromS - trace.ShiftS, set.ToS - trace.ShiftS));

    private static bool SameInstants(Column column, Column other) =>
        column.Range.Count == other.Range.Count && (column.Range.Count == 0
        || (column.TimeAt(0) == other.TimeAt(0) && Math.Abs(column.History.IntervalS - other.History.IntervalS) * column.Range.Count <= SampleGrid.Tolerance * other.History.IntervalS));

    private static void Append(StringBuilder line, Column column, int row, bool withTime, bool first)
    {
        var inside = row < column.Range.Count;
        if (withTime)
        {
            line.Append(first ? "" : ",").Append(inside ? Number(column.TimeAt(row)) : "");
        }

        line.Append(',').Append(inside && column.History.Values.Span[column.Range.First + row] is var value && double.IsFinite(value) ? Number(value) : "");
    }

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static string Quoted(string field) =>
        field.AsSpan().IndexOfAny("\",\r\n") < 0 ? field : $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
