using System.Globalization;
using Toepan.Domain.Packages.Sidecars;
using Toepan.Domain.Packages.Text;

namespace Toepan.Domain.Packages.Iso13499;

/// <summary>
/// A wide CSV under Channel/: first line <c>time</c> and one channel code a column, second line the units (time in s or ms), then numbers.
/// One channel a column, all with the start and interval of the time column, which must be uniform.
/// </summary>
internal sealed class WideCsvReader(ReadingBudget budget, ProblemList problems)
{
    private const string TimeColumn = "time";
    private const int FirstDataLine = 3;
    private const int LongestShown = 80;

    /// <summary>The channels of one file; null, and the package is refused, where the file is malformed or breaks a limit.</summary>
    /// <param name="firstNumber">Number of the first channel column.</param>
    /// <param name="channelsSoFar">Channels the package already has.</param>
    public IReadOnlyList<RecordedChannel>? Read(ReadOnlyMemory<byte> bytes, string file, int firstNumber, int channelsSoFar)
    {
        var place = new Place(file);
        if (!TextFile.TryOpen(bytes, out var text, out var reason))
        {
            problems.Reject(ProblemCodes.Encoding, $"{file} {reason}.", place);
            return null;
        }

        if (ReadHead(text, place) is not { } head || !budget.TakeChannels(channelsSoFar + head.Width - 1, place))
        {
            return null;
        }

        if (CountRows(text, place) is not { } rows)
        {
            return null;
        }

        var columns = new WideColumns(head, rows);
        return ReadRows(text, columns, place) && ChannelsOf(columns, place, firstNumber) is { } channels ? channels : null;
    }

    private WideHead? ReadHead(TextFile text, Place place)
    {
        var lines = new LineScanner(text.Bytes.Span);
        var first = NextFields(text, ref lines, place, separator: null, out var separator);
        var second = first is null ? null : NextFields(text, ref lines, place, separator, out _);
        if (first is null || second is null)
        {
            if (!problems.Rejected)
            {
                problems.Reject(ProblemCodes.CsvEmpty, $"{place.File} needs a line of channel codes and a line of units.", place.At(1));
            }

            return null;
        }

        if (!first[0].Trim().Equals(TimeColumn, StringComparison.OrdinalIgnoreCase) || first.Count < 2)
        {
            problems.Reject(ProblemCodes.CsvMissingColumn, $"The first column must be '{TimeColumn}', followed by channel codes.", place.At(1), first[0], TimeColumn);
            return null;
        }

        if (second.Count != first.Count || NumberText.TryParse(second[0].Trim(), out _, out _))
        {
            problems.Reject(ProblemCodes.CsvNoUnits, "The second line must hold one unit for each column.", place.At(2), second[0]);
            return null;
        }

        return new WideHead([.. first.Select(code => code.Trim())], [.. second.Select(unit => unit.Trim())], separator);
    }

    private IReadOnlyList<string>? NextFields(TextFile text, ref LineScanner lines, Place place, char? separator, out char used)
    {
        used = separator ?? ',';
        if (!lines.Next() || !budget.TakeHeaderLine(lines.Line.Length, place.At(lines.Number)))
        {
            return null;
        }

        var line = text.Decode(lines.Line);
        if (separator is null && CsvTable.UsesSemicolons(line))
        {
            used = ';';
            problems.Warn(ProblemCodes.CsvSemicolon, "Fields are apart by semicolons; commas are expected.", place.At(lines.Number));
        }

        var reader = new CsvReader(line, used);
        var record = reader.Next();
        if (reader.Flaw is { } flaw)
        {
            problems.Reject(ProblemCodes.CsvQuote, $"The line cannot be read: {flaw}.", place.At(lines.Number));
        }

        return record?.Fields;
    }

    // Rows that are not blank, counted before anything is set aside for them.
    private int? CountRows(TextFile text, Place place)
    {
        var rows = 0;
        var lines = new LineScanner(text.Bytes.Span);
        while (lines.Next())
        {
            if (!budget.TakeLine(lines.Line.Length, place.At(lines.Number)))
            {
                return null;
            }

            rows += lines.Number >= FirstDataLine && !IsBlank(lines.Line) ? 1 : 0;
        }

        return rows;
    }

    private bool ReadRows(TextFile text, WideColumns columns, Place place)
    {
        for (var column = 0; column < columns.Head.Width; column++)
        {
            if (!budget.TakeSamples(columns.Rows, place))
            {
                return false;
            }
        }

        columns.SetAside();
        var lines = new LineScanner(text.Bytes.Span);
        var row = 0;
        while (lines.Next())
        {
            if (lines.Number < FirstDataLine || IsBlank(lines.Line))
            {
                continue;
            }

            if (!columns.TakeRow(text, lines.Line, lines.Number, row, out var fields))
            {
                problems.Reject(ProblemCodes.CsvFieldCount, $"The row has {fields} fields; the first line has {columns.Head.Width}.", place.At(lines.Number), Number(fields), Number(columns.Head.Width));
                return false;
            }

            row++;
        }

        return true;
    }

    private List<RecordedChannel> ChannelsOf(WideColumns columns, Place place, int firstNumber)
    {
        var times = Times(columns, place, out var reason);
        if (columns.FirstCommaLine is { } commaLine)
        {
            problems.Warn(ProblemCodes.DecimalComma, "Numbers with a decimal comma were read as if they had a point.", place.At(commaLine));
        }

        return [.. Enumerable.Range(1, columns.Head.Width - 1).Select(column => Channel(columns, column, place, firstNumber + column - 1, times, reason))];
    }

    private UniformTimes? Times(WideColumns columns, Place place, out string? reason)
    {
        reason = null;
        UniformTimes? times = null;
        var timeUnit = columns.Head.Units[0];
        if (ExplicitTimes.PerSecond(timeUnit) is not { } perSecond)
        {
            problems.Error(ProblemCodes.CsvTimeUnit, $"Times are in '{ProblemList.Show(timeUnit)}'; s or ms is needed. No channel of the file can be used.", place.At(2), timeUnit, "s, ms");
            reason = $"its times are in '{ProblemList.Show(timeUnit)}', not in s or ms";
        }
        else if (columns.Bad[0] is { } bad)
        {
            problems.Error(ProblemCodes.TimesUnusable, $"The time '{ProblemList.Show(bad.Text)}' is not a number. No channel of the file can be used.", place.At(bad.Line), bad.Text);
            reason = $"the time on line {bad.Line} is not a number";
        }
        else if (columns.Rows < 2)
        {
            problems.Error(ProblemCodes.NoSamples, $"{place.File} has {columns.Rows} rows; at least two are needed for an interval.", place, Number(columns.Rows), "2");
            reason = $"its file has {columns.Rows} rows";
        }
        else if ((times = UniformTimes.Of(columns.Samples[0], perSecond)) is { Plausible: false } odd)
        {
            var line = odd.FirstOdd is { } row ? columns.LineOf(row) : (int?)null;
            problems.Error(ProblemCodes.TimesNotUniform, "The times are not uniform. No channel of the file can be used.", place.At(line), odd.FirstOdd is { } at ? columns.Samples[0][at].ToString("R", CultureInfo.InvariantCulture) : null, "1e-6 of an interval");
            reason = "its times are not uniform";
            times = null;
        }

        return times;
    }

    private RecordedChannel Channel(WideColumns columns, int column, Place place, int number, UniformTimes? times, string? reason)
    {
        var code = ChannelFacts.CodeText(columns.Head.Codes[column]);
        place = place.Of(code);
        if (code.Length == 0)
        {
            problems.Error(ProblemCodes.NoCode, $"Column {column + 1} has no channel code.", place.At(1));
        }

        reason = ChannelCodeCheck.Check(code, 1, place, problems) ?? reason;
        if (columns.Head.Units[column].Length == 0 || !HeaderText.HasValue(columns.Head.Units[column]))
        {
            problems.Error(ProblemCodes.NoUnit, "The channel has no unit; it cannot be used.", place.At(2));
            reason ??= "it has no unit";
        }

        if (columns.Bad[column] is { } bad)
        {
            var shown = ProblemList.Show(bad.Text);
            problems.Error(ProblemCodes.BadSample, $"Sample {bad.Row + 1} is '{shown}', which is not a number; the channel cannot be used.", place.At(bad.Line), bad.Text);
            reason ??= $"sample {bad.Row + 1} is '{shown}', which is not a number";
        }

        return new RecordedChannel
        {
            Code = code,
            File = place.File!,
            Number = number,
            Unit = HeaderText.HasValue(columns.Head.Units[column]) ? columns.Head.Units[column] : "",
            FirstSampleS = times?.FirstS,
            IntervalS = times?.IntervalS,
            Samples = columns.Samples[column],
            FirstBadSample = columns.Bad[column]?.Row,
            FirstSampleLine = columns.Rows > 0 ? columns.LineOf(0) : 0,
            UnfitReason = reason,
        };
    }

    /// <summary>Longest piece of a cell a message shows, bytes.</summary>
    public static string Cut(TextFile text, ReadOnlySpan<byte> cell) => text.Decode(cell[..Math.Min(cell.Length, LongestShown)]);

    private static bool IsBlank(ReadOnlySpan<byte> line) => line.IndexOfAnyExcept(" \t,;"u8) < 0;

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
