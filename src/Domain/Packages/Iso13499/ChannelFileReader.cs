using Toepan.Domain.Packages.Text;

namespace Toepan.Domain.Packages.Iso13499;

/// <summary>One ISO/TS 13499 channel file → <see cref="RecordedChannel"/>: header lines up to the first sample, then samples.</summary>
internal sealed class ChannelFileReader(ReadingBudget budget, ProblemList problems)
{
    private readonly SampleReader samples = new(budget);
    private readonly ChannelJudge judge = new(problems);

    /// <summary>
    /// Reads one file. What is wrong with it is a problem of this channel; null only where a limit makes the whole package unreadable.
    /// </summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="file">Its name.</param>
    /// <param name="number">Its number.</param>
    /// <param name="indexed">The index's entry for that number, or null.</param>
    public RecordedChannel? Read(ReadOnlyMemory<byte> bytes, string file, int number, IndexEntry? indexed)
    {
        var place = new Place(file);
        if (!TextFile.TryOpen(bytes, out var text, out var reason))
        {
            problems.Error(ProblemCodes.Encoding, $"{file} {reason}; the channel cannot be used.", place);
            return Unreadable(file, number, indexed, reason!);
        }

        var lines = new LineScanner(text.Bytes.Span);
        if (ReadHeader(text, ref lines, place) is not { } header)
        {
            return null;
        }

        return samples.Read(text, ref lines, header.SamplesFollow, ChannelFacts.Of(header.Entries).Count, place) is { } reading
            ? judge.Judge(new ChannelFile(file, number, header.Entries, reading), indexed)
            : null;
    }

    private (List<HeaderEntry> Entries, bool SamplesFollow)? ReadHeader(TextFile text, ref LineScanner lines, Place place)
    {
        var entries = new List<HeaderEntry>();
        while (lines.Next())
        {
            if (IsSampleLine(lines))
            {
                return (entries, true);
            }

            if (!budget.TakeHeaderLine(lines.Line.Length, place.At(lines.Number)))
            {
                return null;
            }

            var line = text.Decode(lines.Line);
            if (!string.IsNullOrWhiteSpace(line))
            {
                entries.Add(HeaderText.Parse(line, lines.Number));
                HeaderFile.WarnOfMissingKey(entries[^1], place, problems);
            }
        }

        return (entries, false);
    }

    // Samples begin at the first line that is a number up to its first blank or colon, or that has no colon and is no stray text amid the
    // header: a stray line is followed by a header line.
    private static bool IsSampleLine(LineScanner at)
    {
        var line = at.Line.Trim(" \t"u8);
        if (line.IsEmpty)
        {
            return false;
        }

        var colon = line.IndexOf((byte)':');
        if (colon >= 0)
        {
            return NumberText.TryParse(line[..colon].TrimEnd(" \t"u8), out _, out _);
        }

        var end = line.IndexOfAny(" \t;"u8);
        if (NumberText.TryParse(end < 0 ? line : line[..end], out _, out _))
        {
            return true;
        }

        while (at.Next())
        {
            var next = at.Line.Trim(" \t"u8);
            if (!next.IsEmpty)
            {
                return !next.Contains((byte)':');
            }
        }

        return true;
    }

    private static RecordedChannel Unreadable(string file, int number, IndexEntry? indexed, string reason) => new()
    {
        Code = indexed?.Code ?? "",
        File = file,
        Number = number,
        Unit = "",
        FirstSampleS = null,
        IntervalS = null,
        Samples = default,
        UnfitReason = $"its file {reason}",
    };
}
