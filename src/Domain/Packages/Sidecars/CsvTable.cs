using System.Globalization;

namespace Toepan.Domain.Packages.Sidecars;

/// <summary>A CSV file with a header line; columns are found by name, whatever their order and case.</summary>
internal sealed class CsvTable
{
    private readonly CsvReader reader;
    private readonly Dictionary<string, int> columns = new(StringComparer.OrdinalIgnoreCase);
    private readonly ReadingBudget budget;
    private int width;

    private CsvTable(CsvReader reader, bool semicolon, Place place, ReadingBudget budget, ProblemList problems) =>
        (this.reader, Semicolon, Place, this.budget, Problems) = (reader, semicolon, place, budget, problems);

    public Place Place { get; }

    public ProblemList Problems { get; }

    /// <summary>Fields are apart by semicolons, so that a comma in a number can only be a decimal comma.</summary>
    public bool Semicolon { get; }

    /// <summary>True once a decimal comma has been warned of.</summary>
    public bool CommaTold { get; set; }

    /// <summary>Opens the table; null, and the package is refused, where there is no header line or a required column is missing.</summary>
    public static CsvTable? Open(ReadOnlyMemory<byte> bytes, Place place, ReadingBudget budget, ProblemList problems, string[] required, string[] optional)
    {
        if (CsvReader.Decode(bytes, place, budget, problems) is not { } text)
        {
            return null;
        }

        var semicolon = UsesSemicolons(text);
        var table = new CsvTable(new CsvReader(text, semicolon ? ';' : ','), semicolon, place, budget, problems);
        if (table.NextRecord() is not { } header)
        {
            if (!problems.Rejected)
            {
                problems.Reject(ProblemCodes.CsvEmpty, $"{place.File} is empty; a header line with the column names is needed.", place.At(1));
            }

            return null;
        }

        if (semicolon)
        {
            problems.Warn(ProblemCodes.CsvSemicolon, "Fields are apart by semicolons; commas are expected.", place.At(header.Line));
        }

        return table.ReadHeader(header, required, optional) ? table : null;
    }

    /// <summary>Every row that is not blank; stops where the file is malformed, and the package is refused.</summary>
    public IEnumerable<CsvRow> Rows()
    {
        var count = 0;
        while (NextRecord() is { } record)
        {
            if (++count > budget.Limits.MaxRows)
            {
                Problems.Reject(ProblemCodes.TooManyRows, $"{Place.File} has more than {budget.Limits.MaxRows} rows.", Place.At(record.Line), Text(count), Text(budget.Limits.MaxRows));
                yield break;
            }

            if (record.Fields.Count != width)
            {
                Problems.Reject(ProblemCodes.CsvFieldCount, $"The row has {record.Fields.Count} fields; the header line has {width}.", Place.At(record.Line), Text(record.Fields.Count), Text(width));
                continue;
            }

            yield return new CsvRow(this, record, columns);
        }
    }

    public static bool UsesSemicolons(string text)
    {
        var header = text.AsSpan(0, text.AsSpan().IndexOfAny('\r', '\n') is var end and >= 0 ? end : text.Length);
        return !header.Contains(',') && header.Contains(';');
    }

    private CsvRecord? NextRecord()
    {
        CsvRecord? record;
        do
        {
            record = reader.Next();
        }
        while (record is { Blank: true });
        if (reader.Flaw is { } flaw)
        {
            Problems.Reject(ProblemCodes.CsvQuote, $"The row cannot be read: {flaw}.", Place.At(reader.Line));
        }

        return record;
    }

    private bool ReadHeader(CsvRecord header, string[] required, string[] optional)
    {
        var good = true;
        width = header.Fields.Count;
        for (var i = 0; i < width; i++)
        {
            var name = header.Fields[i].Trim();
            if (!required.Concat(optional).Contains(name, StringComparer.OrdinalIgnoreCase))
            {
                Problems.Warn(ProblemCodes.CsvUnknownColumn, $"The column '{ProblemList.Show(name)}' is unknown and not read.", Place.At(header.Line), name);
            }
            else if (!columns.TryAdd(name, i))
            {
                Problems.Reject(ProblemCodes.CsvDuplicateColumn, $"The column '{name}' is there twice.", Place.At(header.Line), name);
                good = false;
            }
        }

        foreach (var name in required.Where(name => !columns.ContainsKey(name)))
        {
            Problems.Reject(ProblemCodes.CsvMissingColumn, $"The column '{name}' is missing.", Place.At(header.Line), name);
            good = false;
        }

        return good;
    }

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);
}
