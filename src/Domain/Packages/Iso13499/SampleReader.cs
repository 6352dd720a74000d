using Toepan.Domain.Packages.Text;

namespace Toepan.Domain.Packages.Iso13499;

/// <summary>What the sample lines of one channel file came to.</summary>
/// <param name="Values">Samples; NaN where missing or not a number.</param>
/// <param name="FirstLine">Line of the first sample; 0 where there is none.</param>
/// <param name="FirstBad">Index of the first sample that is no finite number, or null.</param>
/// <param name="FirstBadLine">Its line.</param>
/// <param name="FirstBadText">What stands there.</param>
/// <param name="BadCount">How many there are.</param>
/// <param name="FirstCommaLine">First line with a decimal comma, or null.</param>
internal sealed record SampleReading(
    double[] Values, int FirstLine, int? FirstBad, int FirstBadLine, string? FirstBadText, int BadCount, int? FirstCommaLine);

/// <summary>
/// Reads sample lines: one or several numbers a line, apart by blanks, tabs or semicolons. A blank line between samples is passed over, but
/// where the stated count shows that it stands for a sample it is a missing one. One per reading of a package: its buffer is used again for
/// every channel.
/// </summary>
internal sealed class SampleReader(ReadingBudget budget)
{
    private const int FirstCapacity = 1 << 14;
    private const int LongestShown = 80;

    private double[] buffer = new double[FirstCapacity];
    private int count;
    private int firstLine;
    private int? firstBad;
    private int firstBadLine;
    private string? firstBadText;
    private int badCount;
    private int? firstCommaLine;
    private int openBlanks;
    private int firstOpenBlank;
    private readonly List<(int Index, int Count, int Line)> blanks = [];

    /// <summary>
    /// Reads from the scanner's current line (which <paramref name="pending"/> says is a sample line) to the end; null where a limit was broken.
    /// </summary>
    public SampleReading? Read(TextFile text, ref LineScanner lines, bool pending, int? stated, Place place)
    {
        blanks.Clear();
        openBlanks = 0;
        (count, firstLine, firstBad, firstBadLine, firstBadText, badCount, firstCommaLine) = (0, 0, null, 0, null, 0, null);
        while (pending || lines.Next())
        {
            pending = false;
            if (!budget.TakeLine(lines.Line.Length, place.At(lines.Number)))
            {
                return null;
            }

            TakeLine(text, lines.Line, lines.Number);
            if (count > budget.Limits.MaxSamples)
            {
                break;
            }
        }

        InsertMissing(stated);
        return budget.TakeSamples(count, place.At(lines.Number))
            ? new SampleReading(buffer.AsSpan(0, count).ToArray(), firstLine, firstBad, firstBadLine, firstBadText, badCount, firstCommaLine)
            : null;
    }

    private void TakeLine(TextFile text, ReadOnlySpan<byte> line, int number)
    {
        var before = count;
        TakeTokens(text, line, number);
        if (count == before && count > 0)
        {
            firstOpenBlank = openBlanks++ == 0 ? number : firstOpenBlank;
        }
        else if (count > before && openBlanks > 0)
        {
            blanks.Add((before, openBlanks, firstOpenBlank));
            openBlanks = 0;
        }
    }

    // Blank lines are samples where only together with them the count is the stated one.
    private void InsertMissing(int? stated)
    {
        var missing = blanks.Sum(blank => (long)blank.Count);
        if (missing == 0 || count == stated || count + missing != stated || stated > budget.Limits.MaxSamples)
        {
            return;
        }

        var whole = new double[stated.Value];
        var (from, to) = (0, 0);
        foreach (var (index, number, _) in blanks.Append((count, 0, 0)))
        {
            buffer.AsSpan(from, index - from).CopyTo(whole.AsSpan(to));
            to += index - from;
            whole.AsSpan(to, number).Fill(double.NaN);
            (from, to) = (index, to + number);
        }

        if (firstBad is null || firstBad >= blanks[0].Index)
        {
            (firstBad, firstBadLine, firstBadText) = (blanks[0].Index, blanks[0].Line, "");
        }

        (buffer, count, badCount) = (whole, stated.Value, badCount + (int)missing);
    }

    private void TakeTokens(TextFile text, ReadOnlySpan<byte> line, int number)
    {
        while (true)
        {
            var start = line.IndexOfAnyExcept(" \t;"u8);
            if (start < 0)
            {
                return;
            }

            line = line[start..];
            var end = line.IndexOfAny(" \t;"u8);
            var token = end < 0 ? line : line[..end];
            TakeToken(text, token, number);
            line = line[token.Length..];
        }
    }

    private void TakeToken(TextFile text, ReadOnlySpan<byte> token, int line)
    {
        if (count == buffer.Length)
        {
            Array.Resize(ref buffer, buffer.Length * 2);
        }

        firstLine = firstLine == 0 ? line : firstLine;
        if (NumberText.TryParse(token, out var value, out var comma))
        {
            firstCommaLine ??= comma ? line : null;
        }
        else
        {
            value = double.NaN;
            badCount++;
            if (firstBad is null)
            {
                (firstBad, firstBadLine, firstBadText) = (count, line, text.Decode(token[..Math.Min(token.Length, LongestShown)]));
            }
        }

        buffer[count++] = value;
    }
}
