using Toepan.Domain.Packages;
using Toepan.Domain.Packages.Sidecars;

namespace Toepan.Domain.Analysis.Historic;

/// <summary>Header and rows of a file of historic results → runs.</summary>
internal sealed class HistoricRows(CsvReader reader, bool semicolon, HistoricLimits limits, ProblemList problems)
{
    private readonly Dictionary<string, int> columns = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HistoricRunBuilder> byTest = new(StringComparer.Ordinal);
    private readonly List<HistoricRunBuilder> runs = [];
    private List<string> measures = [];
    private int width;

    private static Place File => new(HistoricFile.Name);

    /// <summary>The runs and how many rows there were; <see cref="ProblemList.Rejected"/> says whether they count.</summary>
    public (IReadOnlyList<HistoricRun> Runs, int Rows) Read(CancellationToken cancellation)
    {
        if (Record() is not { } header)
        {
            Empty("The file is empty; its first line names the columns.", 1);
            return ([], 0);
        }

        ReadHeader(header);
        if (problems.Rejected)
        {
            return ([], 0);
        }

        var rows = 0;
        while (Record() is { } record)
        {
            cancellation.ThrowIfCancellationRequested();
            if (++rows > limits.MaxRows)
            {
                problems.Reject(HistoricProblems.TooManyRows, $"Line {record.Line}: the file has more than {limits.MaxRows} rows.", File.At(record.Line), HistoricFile.Written(rows), HistoricFile.Written(limits.MaxRows));
                return ([], rows);
            }

            Take(record);
        }

        if (rows == 0)
        {
            Empty("The file has a header and no row.", 2);
        }

        IReadOnlyList<HistoricRun> built = [.. runs.Select(run => run.Build()).OfType<HistoricRun>()];
        VehicleAgreement.Check(built, problems);
        return (built, rows);
    }

    private void Empty(string message, int line)
    {
        if (!problems.Rejected)
        {
            problems.Reject(HistoricProblems.Unreadable, message, File.At(line));
        }
    }

    private void Take(CsvRecord record)
    {
        if (record.Fields.Count != width)
        {
            problems.Reject(HistoricProblems.FieldCount, $"Line {record.Line}: the row has {record.Fields.Count} fields; the header line has {width}.", File.At(record.Line), HistoricFile.Written(record.Fields.Count), HistoricFile.Written(width));
            return;
        }

        var row = new HistoricCell(record.Fields, columns, File.At(record.Line), problems) { Semicolon = semicolon, LongestText = limits.LongestText };
        if (row.Test() is not { } test)
        {
            return;
        }

        if (!byTest.TryGetValue(test, out var run))
        {
            byTest[test] = run = new HistoricRunBuilder(test, record.Line, problems);
            runs.Add(run);
        }

        run.Take(row, measures);
    }

    private CsvRecord? Record()
    {
        CsvRecord? record;
        do
        {
            record = reader.Next();
        }
        while (record is { Blank: true });
        if (reader.Flaw is { } flaw)
        {
            problems.Reject(HistoricProblems.Quote, $"Line {reader.Line}: the row cannot be read: {flaw}.", File.At(reader.Line));
        }

        return record;
    }

    private void ReadHeader(CsvRecord header)
    {
        width = header.Fields.Count;
        var place = File.At(header.Line);
        if (width > limits.MaxColumns)
        {
            problems.Reject(HistoricProblems.TooManyColumns, $"The header line has {width} columns; at most {limits.MaxColumns} are read.", place, HistoricFile.Written(width), HistoricFile.Written(limits.MaxColumns));
            return;
        }

        for (var i = 0; i < width; i++)
        {
            Name(header.Fields[i].Trim(), i, place);
        }

        foreach (var name in HistoricColumns.Fixed.Where(name => !columns.ContainsKey(name)))
        {
            problems.Reject(HistoricProblems.MissingColumn, $"Line {header.Line}: the column '{name}' is missing.", place with { Column = name }, "", string.Join(",", HistoricColumns.Fixed));
        }

        measures = [.. columns.Keys.Except(HistoricColumns.Fixed)];
    }

    private void Name(string written, int index, Place place)
    {
        var name = HistoricColumns.Fixed.FirstOrDefault(column => column.Equals(written, StringComparison.OrdinalIgnoreCase)) ?? written;
        if (!HistoricColumns.Fixed.Contains(name) && !HistoricColumns.IsMeasure(name))
        {
            problems.Reject(HistoricProblems.UnknownColumn, $"Line {place.Line}: the column '{ProblemList.Show(name)}' is neither one of the fixed ones nor a measure code.", place with { Column = name }, name, "a measure code of the catalogue");
        }
        else if (!columns.TryAdd(name, index))
        {
            problems.Reject(HistoricProblems.DuplicateColumn, $"Line {place.Line}: the column '{name}' is there twice.", place with { Column = name }, name, "once");
        }
    }
}
