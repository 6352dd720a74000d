using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Toepan.Domain.Packages;

namespace Toepan.Domain.Analysis.Historic;

/// <summary>
/// One run while its rows come in. What belongs to the run or its vehicle stands in one row or is the same in all; what belongs to a seat stands in the row of
/// that seat, and each seat has one row.
/// </summary>
internal sealed class HistoricRunBuilder(string test, int firstLine, ProblemList problems)
{
    private readonly Dictionary<string, (object Value, int Line)> shared = [];
    private readonly SortedDictionary<int, string?> occupants = [];
    private readonly Dictionary<string, (double Value, int Line)> ofVehicle = new(StringComparer.Ordinal);
    private readonly List<HistoricValue> values = [];

    /// <summary>Takes a row; its test is this one's.</summary>
    public void Take(HistoricCell row, IReadOnlyList<string> measures)
    {
        Share(row, HistoricColumns.Vehicle, row.Key(HistoricColumns.Vehicle, required: true));
        Share(row, HistoricColumns.Make, row.Name(HistoricColumns.Make));
        Share(row, HistoricColumns.Model, row.Name(HistoricColumns.Model));
        Share(row, HistoricColumns.Class, row.Key(HistoricColumns.Class, required: false));
        Share(row, HistoricColumns.ModelYear, row.Year());
        Share(row, HistoricColumns.Procedure, row.Key(HistoricColumns.Procedure, required: true));
        Share(row, HistoricColumns.Date, row.Date());
        Share(row, HistoricColumns.TestMass, row.Mass());
        var position = Seat(row);
        foreach (var code in measures)
        {
            if (row.Value(code) is { } value)
            {
                Keep(row, code, position, value);
            }
        }
    }

    /// <summary>The run; null where a row lacked what every run needs, which was told.</summary>
    public HistoricRun? Build()
    {
        values.AddRange(ofVehicle.Select(pair => new HistoricValue(pair.Key, HistoricValue.OfVehicle, pair.Value.Value)));
        values.Sort((a, b) => (string.CompareOrdinal(a.Code, b.Code), a.Position.CompareTo(b.Position)) is var (code, seat) && code != 0 ? code : seat);
        if (values.Count == 0)
        {
            problems.Warn(HistoricProblems.NoValue, $"Test '{test}' has no value.", new Place(HistoricFile.Name, firstLine), test);
        }

        if (Shared<string>(HistoricColumns.Vehicle) is not { } vehicle || Shared<string>(HistoricColumns.Procedure) is not { } procedure)
        {
            return null;
        }

        var run = new HistoricRun
        {
            Test = test, Vehicle = vehicle, Procedure = procedure, Line = firstLine, Digest = "",
            Make = Shared<string>(HistoricColumns.Make), Model = Shared<string>(HistoricColumns.Model), Class = Shared<string>(HistoricColumns.Class),
            ModelYear = SharedValue<int>(HistoricColumns.ModelYear), Date = SharedValue<DateOnly>(HistoricColumns.Date),
            TestMassKg = SharedValue<decimal>(HistoricColumns.TestMass),
            Occupants = [.. occupants.Select(pair => new HistoricOccupant(pair.Key, pair.Value))], Values = values,
        };
        return run with { Digest = DigestOf(run) };
    }

    private int? Seat(HistoricCell row)
    {
        var dummy = row.Dummy();
        if (row.Position() is not { } position)
        {
            return null;
        }

        if (!occupants.TryAdd(position, dummy))
        {
            problems.Reject(
                HistoricProblems.PositionTwice, $"Line {row.Line}: test '{test}' has position {position} on an earlier line already.", row.At(HistoricColumns.Position),
                position.ToString(CultureInfo.InvariantCulture), "each position once a test");
        }

        return position;
    }

    private void Keep(HistoricCell row, string code, int? position, double value)
    {
        if (!HistoricColumns.BelongsToVehicle(code))
        {
            if (position is { } seat)
            {
                values.Add(new(code, seat, value));
                return;
            }

            problems.Reject(
                HistoricProblems.Missing, $"Line {row.Line}: {code} belongs to a seat, but the row names no position.", row.At(HistoricColumns.Position), "", "1 to 9");
        }
        else if (!ofVehicle.TryAdd(code, (value, row.Line)) && !ofVehicle[code].Value.Equals(value))
        {
            Disagree(row, code, Written(value), Written(ofVehicle[code].Value), ofVehicle[code].Line);
        }
    }

    private void Share(HistoricCell row, string column, object? value)
    {
        if (value is not null && !shared.TryAdd(column, (value, row.Line)) && !shared[column].Value.Equals(value))
        {
            Disagree(row, column, Written(value), Written(shared[column].Value), shared[column].Line);
        }
    }

    private void Disagree(HistoricCell row, string column, string value, string other, int otherLine) => problems.Reject(
        HistoricProblems.Disagrees, $"Line {row.Line}: {column} of test '{test}' is '{ProblemList.Show(value)}', but '{ProblemList.Show(other)}' on line {otherLine}.",
        row.At(column), value, other);

    private T? Shared<T>(string column)
        where T : class => shared.TryGetValue(column, out var found) ? (T)found.Value : null;

    private T? SharedValue<T>(string column)
        where T : struct => shared.TryGetValue(column, out var found) ? (T)found.Value : null;

    private static string Written(object value) => value switch
    {
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        DateOnly date => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString()!,
    };

    private static string DigestOf(HistoricRun run)
    {
        var text = new StringBuilder().AppendJoin(
            '\n', run.Vehicle, run.Procedure, run.ModelYear, run.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            run.TestMassKg is { } mass ? ((double)mass).ToString("R", CultureInfo.InvariantCulture) : null);
        foreach (var occupant in run.Occupants)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{occupant.Position} {occupant.Dummy}");
        }

        foreach (var value in run.Values)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{value.Code} {value.Position} {value.Value:R}");
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }
}
