using Toepan.Domain.Channels;

namespace Toepan.Domain.Analysis.Traces;

/// <summary>What of a signal is sent to be drawn: every sample, or of every pixel column its two extremes.</summary>
/// <param name="Reduced">Whether <paramref name="Values"/> are pairs a column.</param>
/// <param name="FirstS">Time of the first value where nothing was reduced, s.</param>
/// <param name="Values">Samples in order, or two a column: its least and greatest sample in order of time. NaN where there is none.</param>
public sealed record ReducedTrace(bool Reduced, double FirstS, double[] Values);

/// <summary>
/// Min–max by pixel column. The window from … to is cut into equal columns; a sample belongs to the column its time falls into, a time on
/// a bound to the later one (the last column holds its end too; tolerance 1e-6 of an interval). Each column gives its least and its greatest finite sample, in
/// order of time, so no extreme is lost at any zoom. A column without a finite sample gives NaN twice. Up to two samples a column in
/// all, they are given as they are, one more to each side so that a line reaches the window's edges.
/// </summary>
public static class ColumnReduction
{
    public static ReducedTrace Reduce(TimeHistory history, double fromS, double toS, int columns)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        var range = SampleGrid.Between(history, fromS, toS);
        if (range.Count <= 2 * columns)
        {
            var first = Math.Max(0, range.First - 1);
            var last = Math.Min(history.Count - 1, Math.Max(range.Last, first - 1) + 1);
            return range.Count == 0
                ? new(false, fromS, [])
                : new(false, history.TimeAt(first), history.Values[first..(last + 1)].ToArray());
        }

        var values = new double[2 * columns];
        var begin = range.First;
        for (var column = 0; column < columns; column++)
        {
            var end = column == columns - 1 ? range.Last + 1 : FirstFrom(history, fromS + ((toS - fromS) * (column + 1) / columns));
            end = Math.Clamp(end, begin, range.Last + 1);
            (values[2 * column], values[(2 * column) + 1]) = Extremes(history.Values.Span[begin..end]);
            begin = end;
        }

        return new(true, fromS, values);
    }

    /// <summary>Index of the first sample at or after a time.</summary>
    private static int FirstFrom(TimeHistory history, double timeS) =>
        (int)Math.Clamp(Math.Ceiling(((timeS - history.StartS) / history.IntervalS) - SampleGrid.Tolerance), 0, history.Count);

    private static (double First, double Second) Extremes(ReadOnlySpan<double> values)
    {
        var (least, greatest) = (-1, -1);
        for (var i = 0; i < values.Length; i++)
        {
            if (double.IsFinite(values[i]))
            {
                least = least < 0 || values[i] < values[least] ? i : least;
                greatest = greatest < 0 || values[i] > values[greatest] ? i : greatest;
            }
        }

        return least < 0 ? (double.NaN, double.NaN) : (values[Math.Min(least, greatest)], values[Math.Max(least, greatest)]);
    }
}
