using System.Globalization;
using Toepan.Domain.Packages.Text;

namespace Toepan.Domain.Packages.Sidecars;

/// <summary>One row of a <see cref="CsvTable"/>: cells by column name, with a problem for each that cannot be read.</summary>
internal sealed class CsvRow(CsvTable table, CsvRecord record, Dictionary<string, int> columns)
{
    /// <summary>Names longer than this are refused (our own bound).</summary>
    public const int LongestName = 100;

    /// <summary>Numbers beyond this are no measurement of a vehicle in any unit (our own bound, no source).</summary>
    public const double LargestNumber = 1e9;

    public int Line => record.Line;

    public Place Place => table.Place.At(record.Line);

    /// <summary>Trimmed cell; empty where the column is not there.</summary>
    public string Text(string column) => columns.TryGetValue(column, out var index) ? record.Fields[index].Trim() : "";

    /// <summary>A name: lower case (told where it was not), not blank, not endless. Null, and the package is refused, otherwise.</summary>
    public string? Name(string column)
    {
        var written = Text(column);
        if (written.Length is 0 or > LongestName)
        {
            table.Problems.Reject(ProblemCodes.CsvValue, $"The {column} is {(written.Length == 0 ? "blank" : $"longer than {LongestName} characters")}.", Place, written, $"1 to {LongestName} characters");
            return null;
        }

        var name = written.ToLowerInvariant();
        if (name != written)
        {
            table.Problems.Note(ProblemCodes.NameCase, $"The {column} '{ProblemList.Show(written)}' is kept in lower case.", Place, written);
        }

        return name;
    }

    /// <summary>A finite number; null where the cell is blank. False, and the package is refused, where it is neither.</summary>
    public bool TryNumber(string column, out double? number)
    {
        number = null;
        var text = Text(column);
        if (text.Length == 0)
        {
            return true;
        }

        if (NumberText.TryParse(text, out var value, out var comma) && (!comma || table.Semicolon) && Math.Abs(value) <= LargestNumber)
        {
            number = value;
            TellComma(comma);
            return true;
        }

        table.Problems.Reject(ProblemCodes.CsvNumber, $"The {column} is '{ProblemList.Show(text)}', which is no number within ±{LargestNumber.ToString("R", CultureInfo.InvariantCulture)}.", Place, text, "a number");
        return false;
    }

    /// <summary>One of some words, whatever its case; null, and the package is refused, where it is none of them.</summary>
    public string? OneOf(string column, params string[] words)
    {
        var text = Text(column);
        var word = Array.Find(words, word => word.Equals(text, StringComparison.OrdinalIgnoreCase));
        if (word is null)
        {
            table.Problems.Reject(ProblemCodes.CsvValue, $"The {column} is '{ProblemList.Show(text)}'; it must be {string.Join(" or ", words)}.", Place, text, string.Join(", ", words));
        }

        return word;
    }

    private void TellComma(bool comma)
    {
        if (comma && !table.CommaTold)
        {
            table.CommaTold = true;
            table.Problems.Warn(ProblemCodes.DecimalComma, "Numbers with a decimal comma were read as if they had a point.", Place);
        }
    }
}
