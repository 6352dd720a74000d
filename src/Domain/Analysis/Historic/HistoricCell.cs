using System.Globalization;
using System.Text.RegularExpressions;
using Toepan.Domain.Packages;
using Toepan.Domain.Packages.Text;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Analysis.Historic;

/// <summary>The cells of one row, read by column; what cannot be read is a problem with line, column, value and limit, and counts as absent.</summary>
internal sealed partial class HistoricCell(IReadOnlyList<string> fields, IReadOnlyDictionary<string, int> columns, Place line, ProblemList problems)
{
    private const double LargestValue = 1e9;
    private const decimal LeastMassKg = 50;
    private const decimal GreatestMassKg = 60_000;
    private const int EarliestYear = 1900;
    private const int LatestYear = 2200;
    private const int LastPosition = 9;
    private const int LongestTest = 40;

    /// <summary>Fields are apart by semicolons, so that a comma in a number can only be a decimal comma.</summary>
    public bool Semicolon { get; init; }

    public int LongestText { get; init; }

    public int Line => line.Line!.Value;

    public Place At(string column) => line with { Column = column };

    /// <summary>
    /// A test code: letters, digits, point, hyphen, underscore and slash, at most 40. Wider than a package's, since the trade numbers its tests in many ways.
    /// </summary>
    public string? Test() => Word(HistoricColumns.Test, TestCode(), $"1 to {LongestTest} letters, digits, points, hyphens, underscores and slashes, a letter or digit first", required: true);

    public string? Key(string column, bool required) =>
        Word(column, KeyWord(), $"2 to {LongestText} letters, digits, points, hyphens and underscores, a letter or digit first", required);

    /// <summary>A name; null where it is empty.</summary>
    public string? Name(string column)
    {
        var text = Text(column);
        var good = text.Length <= LongestText && !text.Any(char.IsControl);
        return good ? text.Length == 0 ? null : text : Refuse<string>(column, text, $"at most {LongestText} characters, no control characters");
    }

    public int? Year() => Whole(HistoricColumns.ModelYear, EarliestYear, LatestYear);

    public int? Position() => Whole(HistoricColumns.Position, 1, LastPosition);

    public string? Dummy()
    {
        var text = Text(HistoricColumns.Dummy);
        return text.Length == 0 || Enum.GetNames<DummyType>().Contains(text)
            ? text.Length == 0 ? null : text
            : Refuse<string>(HistoricColumns.Dummy, text, string.Join(" or ", Enum.GetNames<DummyType>()));
    }

    public DateOnly? Date()
    {
        var text = Text(HistoricColumns.Date);
        if (text.Length == 0)
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
        {
            return date;
        }

        Refuse<string>(HistoricColumns.Date, text, "a day written YYYY-MM-DD");
        return null;
    }

    public decimal? Mass() => Number(HistoricColumns.TestMass) is not { } mass ? null
        : mass >= (double)LeastMassKg && mass <= (double)GreatestMassKg ? (decimal)mass
        : OutOfRange<decimal>(HistoricColumns.TestMass, mass, $"{LeastMassKg} to {GreatestMassKg} kg");

    /// <summary>A measure's value; null where it is empty or cannot be taken.</summary>
    public double? Value(string code)
    {
        if (Number(code) is not { } value)
        {
            return null;
        }

        if (code.StartsWith("risk.", StringComparison.Ordinal) && value is < 0 or > 1)
        {
            return OutOfRange<double>(code, value, "a probability, 0 to 1");
        }

        if (value < 0 && !HistoricColumns.MayBeNegative(code))
        {
            problems.Warn(HistoricProblems.Sign, $"{code} is {Written(value)}, but is a magnitude; it is kept as it is.", At(code), Written(value), "0 or more");
        }

        return value;
    }

    private double? Number(string column)
    {
        var text = Text(column);
        if (text.Length == 0)
        {
            return null;
        }

        if (!NumberText.TryParse(text, out var value, out var comma) || (comma && !Semicolon))
        {
            Refuse<string>(column, text, "a number such as 12.5");
            return null;
        }

        return Math.Abs(value) <= LargestValue ? value : OutOfRange<double>(column, value, $"within ±{Written(LargestValue)}");
    }

    private int? Whole(string column, int least, int most)
    {
        var text = Text(column);
        if (text.Length == 0 || (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most))
        {
            return text.Length == 0 ? null : int.Parse(text, CultureInfo.InvariantCulture);
        }

        Refuse<string>(column, text, $"a whole number from {least} to {most}");
        return null;
    }

    private string? Word(string column, Regex pattern, string limit, bool required)
    {
        var text = Text(column);
        if (text.Length == 0)
        {
            if (required)
            {
                problems.Reject(HistoricProblems.Missing, $"Line {Line}: the {column} is empty.", At(column), "", "not empty");
            }

            return null;
        }

        return pattern.IsMatch(text) ? text : Refuse<string>(column, text, limit);
    }

    private string Text(string column) => columns.TryGetValue(column, out var index) ? fields[index].Trim() : "";

    private T? Refuse<T>(string column, string value, string limit)
        where T : class
    {
        problems.Reject(HistoricProblems.Value, $"Line {Line}: {column} is '{ProblemList.Show(value)}'; it must be {limit}.", At(column), value, limit);
        return null;
    }

    private T? OutOfRange<T>(string column, double value, string limit)
        where T : struct
    {
        problems.Reject(HistoricProblems.Range, $"Line {Line}: {column} is {Written(value)}; it must be {limit}.", At(column), Written(value), limit);
        return null;
    }

    private static string Written(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\A[A-Za-z0-9][A-Za-z0-9._/-]{0,39}\z", RegexOptions.CultureInvariant)]
    private static partial Regex TestCode();

    [GeneratedRegex(@"\A[A-Za-z0-9][A-Za-z0-9._-]{1,99}\z", RegexOptions.CultureInvariant)]
    private static partial Regex KeyWord();
}
