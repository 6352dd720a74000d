namespace Toepan.Domain.Packages.Text;

/// <summary>Goes through the lines of a text file; LF, CR LF and CR end a line. Lines are numbered from 1.</summary>
internal ref struct LineScanner(ReadOnlySpan<byte> text)
{
    private ReadOnlySpan<byte> rest = text;

    /// <summary>The current line without its end.</summary>
    public ReadOnlySpan<byte> Line { get; private set; }

    /// <summary>Number of the current line; 0 before the first.</summary>
    public int Number { get; private set; }

    /// <summary>Moves to the next line; false at the end. A final line end does not begin another line.</summary>
    public bool Next()
    {
        if (rest.IsEmpty)
        {
            return false;
        }

        var cut = rest.IndexOfAny((byte)'\n', (byte)'\r');
        Number++;
        if (cut < 0)
        {
            Line = rest;
            rest = default;
            return true;
        }

        Line = rest[..cut];
        var pair = rest[cut] == '\r' && cut + 1 < rest.Length && rest[cut + 1] == '\n';
        rest = rest[(cut + (pair ? 2 : 1))..];
        return true;
    }
}
