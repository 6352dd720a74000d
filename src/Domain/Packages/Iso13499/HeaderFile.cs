using Toepan.Domain.Packages.Text;

namespace Toepan.Domain.Packages.Iso13499;

/// <summary>A file that is nothing but header lines: the .mme test header and the .chn channel index.</summary>
internal static class HeaderFile
{
    /// <summary>Every line that is not blank, or null where the file is no text or breaks a limit.</summary>
    public static IReadOnlyList<HeaderEntry>? Read(ReadOnlyMemory<byte> bytes, Place place, ReadingBudget budget, ProblemList problems)
    {
        if (!TextFile.TryOpen(bytes, out var text, out var reason))
        {
            problems.Reject(ProblemCodes.Encoding, $"{place.File} {reason}.", place);
            return null;
        }

        var entries = new List<HeaderEntry>();
        var lines = new LineScanner(text.Bytes.Span);
        while (lines.Next())
        {
            if (!budget.TakeHeaderLine(lines.Line.Length, place.At(lines.Number)))
            {
                return null;
            }

            var line = text.Decode(lines.Line);
            if (!string.IsNullOrWhiteSpace(line))
            {
                entries.Add(HeaderText.Parse(line, lines.Number));
                WarnOfMissingKey(entries[^1], place, problems);
            }
        }

        return entries;
    }

    public static void WarnOfMissingKey(HeaderEntry entry, Place place, ProblemList problems)
    {
        if (entry.Key.Length == 0)
        {
            problems.Warn(ProblemCodes.HeaderLine, "A header line has no descriptor and colon; it is kept.", place.At(entry.Line), entry.Value);
        }
    }
}
