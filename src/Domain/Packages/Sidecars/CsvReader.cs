using System.Text;
using Toepan.Domain.Packages.Text;

namespace Toepan.Domain.Packages.Sidecars;

/// <summary>One record of a CSV file and the line it begins on.</summary>
public sealed record CsvRecord(IReadOnlyList<string> Fields, int Line)
{
    public bool Blank => Fields.All(string.IsNullOrWhiteSpace);
}

/// <summary>
/// Comma-separated records by RFC 4180: fields may be quoted, a quote within is doubled, a quoted field may hold line ends. Written here because
/// each problem needs its physical line and nothing may be guessed: a stray quote is an error, never repaired.
/// </summary>
public sealed class CsvReader(string text, char separator)
{
    private int at;
    private int line = 1;

    /// <summary>Why the last record could not be read, or null.</summary>
    public string? Flaw { get; private set; }

    /// <summary>Line the reader stands on, for a flaw.</summary>
    public int Line => line;

    /// <summary>The next record; null at the end or at a flaw.</summary>
    public CsvRecord? Next()
    {
        if (at >= text.Length || Flaw is not null)
        {
            return null;
        }

        var fields = new List<string>();
        var start = line;
        do
        {
            if (Field() is not { } field)
            {
                return null;
            }

            fields.Add(field);
        }
        while (Take(separator));
        TakeLineEnd();
        return new CsvRecord(fields, start);
    }

    private string? Field()
    {
        if (Take('"'))
        {
            return Quoted();
        }

        var start = at;
        while (at < text.Length && text[at] != separator && text[at] is not ('\r' or '\n'))
        {
            if (text[at] == '"')
            {
                return Fail("a quote stands inside a field that is not quoted");
            }

            at++;
        }

        return text[start..at];
    }

    private string? Quoted()
    {
        var (opened, field) = (line, new StringBuilder());
        while (at < text.Length)
        {
            if (Take('"'))
            {
                if (!Take('"'))
                {
                    return at == text.Length || text[at] == separator || text[at] is '\r' or '\n'
                        ? field.ToString()
                        : Fail("text follows a closing quote");
                }

                field.Append('"');
                continue;
            }

            line += text[at] == '\n' || (text[at] == '\r' && !(at + 1 < text.Length && text[at + 1] == '\n')) ? 1 : 0;
            field.Append(text[at++]);
        }

        line = opened;
        return Fail("a quoted field is never closed");
    }

    private bool Take(char wanted)
    {
        if (at >= text.Length || text[at] != wanted)
        {
            return false;
        }

        at++;
        return true;
    }

    private void TakeLineEnd()
    {
        if (Take('\r') | Take('\n'))
        {
            line++;
        }
    }

    private string? Fail(string flaw)
    {
        Flaw = flaw;
        return null;
    }

    /// <summary>The text of a CSV file whose lines are within the limit; null, and the package is refused, otherwise.</summary>
    internal static string? Decode(ReadOnlyMemory<byte> bytes, Place place, ReadingBudget budget, ProblemList problems)
    {
        if (!TextFile.TryOpen(bytes, out var file, out var reason))
        {
            problems.Reject(ProblemCodes.Encoding, $"{place.File} {reason}.", place);
            return null;
        }

        var lines = new LineScanner(file.Bytes.Span);
        while (lines.Next())
        {
            if (!budget.TakeLine(lines.Line.Length, place.At(lines.Number)))
            {
                return null;
            }
        }

        return file.Decode(file.Bytes.Span);
    }
}
