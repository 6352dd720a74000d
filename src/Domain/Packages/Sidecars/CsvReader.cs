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
/// each problem needs its physical line and nothing may be guessed: a stray quote is an error, never repaired. Reads forward only, a record at a time.
/// </summary>
public sealed class CsvReader(TextReader text, char separator)
{
    private const int End = -1;
    private readonly StringBuilder field = new();
    private int next = text.Read();
    private int line = 1;

    public CsvReader(string text, char separator)
        : this(new StringReader(text), separator)
    {
    }

    /// <summary>Why the last record could not be read, or null.</summary>
    public string? Flaw { get; private set; }

    /// <summary>Line the reader stands on, for a flaw.</summary>
    public int Line => line;

    /// <summary>The next record; null at the end or at a flaw.</summary>
    public CsvRecord? Next()
    {
        if (next == End || Flaw is not null)
        {
            return null;
        }

        var fields = new List<string>();
        var start = line;
        do
        {
            if (Field() is not { } read)
            {
                return null;
            }

            fields.Add(read);
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

        field.Clear();
        while (next != End && next != separator && next is not ('\r' or '\n'))
        {
            if (next == '"')
            {
                return Fail("a quote stands inside a field that is not quoted");
            }

            Keep();
        }

        return field.ToString();
    }

    private string? Quoted()
    {
        var opened = line;
        field.Clear();
        while (next != End)
        {
            if (Take('"'))
            {
                if (next != '"')
                {
                    return next == End || next == separator || next is '\r' or '\n' ? field.ToString() : Fail("text follows a closing quote");
                }

                Keep();
                continue;
            }

            var returned = next == '\r';
            line += next == '\n' ? 1 : 0;
            Keep();
            line += returned && next != '\n' ? 1 : 0;
        }

        line = opened;
        return Fail("a quoted field is never closed");
    }

    private void Keep()
    {
        field.Append((char)next);
        next = text.Read();
    }

    private bool Take(char wanted)
    {
        if (next != wanted)
        {
            return false;
        }

        next = text.Read();
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
