using Toepan.Domain.Packages.Text;

namespace Toepan.Domain.Packages.Iso13499;

/// <summary>First two lines of a wide CSV; column 0 is the time.</summary>
internal sealed record WideHead(IReadOnlyList<string> Codes, IReadOnlyList<string> Units, char Separator)
{
    public int Width => Codes.Count;
}

/// <summary>The first cell of a column that is no number.</summary>
internal sealed record BadCell(int Row, int Line, string Text);

/// <summary>The numbers of a wide CSV by column, filled row by row.</summary>
internal sealed class WideColumns(WideHead head, int rows)
{
    private int[] lineOf = [];

    public WideHead Head => head;

    public int Rows => rows;

    public double[][] Samples { get; private set; } = [];

    public BadCell?[] Bad { get; } = new BadCell?[head.Width];

    public int? FirstCommaLine { get; private set; }

    public int LineOf(int row) => lineOf[row];

    /// <summary>Takes the memory, once the limits have been asked.</summary>
    public void SetAside()
    {
        Samples = [.. Enumerable.Range(0, head.Width).Select(_ => new double[rows])];
        lineOf = new int[rows];
    }

    /// <summary>Reads one row of numbers; false where it has another number of fields than the head.</summary>
    public bool TakeRow(TextFile text, ReadOnlySpan<byte> line, int number, int row, out int fields)
    {
        lineOf[row] = number;
        var separator = (byte)head.Separator;
        for (fields = 0; fields < head.Width; fields++)
        {
            var end = line.IndexOf(separator);
            Take(text, (end < 0 ? line : line[..end]).Trim(" \t\""u8), number, row, fields);
            if (end < 0)
            {
                fields++;
                return fields == head.Width;
            }

            line = line[(end + 1)..];
        }

        fields += 1 + line.Count(separator);
        return false;
    }

    private void Take(TextFile text, ReadOnlySpan<byte> cell, int line, int row, int column)
    {
        if (NumberText.TryParse(cell, out var value, out var comma))
        {
            FirstCommaLine ??= comma ? line : null;
        }
        else
        {
            value = double.NaN;
            Bad[column] ??= new BadCell(row, line, WideCsvReader.Cut(text, cell));
        }

        Samples[column][row] = value;
    }
}
