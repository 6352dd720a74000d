using Toepan.Api.Programme;
using Toepan.Domain.Analysis;
using Toepan.Domain.Measures;
using Toepan.Domain.Programme;

namespace Toepan.Api.Analysis;

/// <summary>Runs and their values → rows by occupant, and statistics.</summary>
internal static class ClassMeasureTable
{
    private const string Driver = "driver";

    public static ClassMeasures Build(
        string key, string title, ClassMeasureQuery query, IReadOnlyList<TestRunSummary> runs, IReadOnlyList<MeasuredValue> values)
    {
        var codes = query.Measures.Count > 0
            ? query.Measures.Distinct().ToList()
            : [.. values.OrderBy(value => value.Ordinal).ThenBy(value => value.Code, StringComparer.Ordinal).Select(value => value.Code).Distinct()];
        var byPlace = values.ToLookup(value => (value.Test, value.Position, value.Code));
        var rows = runs.SelectMany(run => Seats(run, query.Seat).Select(seat => Row(run, seat, codes, byPlace))).ToList();
        var units = values.GroupBy(value => value.Code).ToDictionary(group => group.Key, group => group.First().Unit);
        var ofVehicle = values.Where(value => value.Position is null).Select(value => value.Code).ToHashSet();
        var statistics = codes.Select((code, column) => ClassMeasureStatistics.Of(
            code, units.GetValueOrDefault(code) ?? MeasureCatalogue.Find(code)?.Unit ?? "", SampleStatistics.Of(Column(rows, column, onceARun: ofVehicle.Contains(code)))));
        return new ClassMeasures(key, title, query.Seat, query.Runs, codes, rows, [.. statistics]);
    }

    /// <summary>The occupants wanted. The driver is who sits in seat "driver", else the lowest position; passengers are all others.</summary>
    private static IEnumerable<Occupant> Seats(TestRunSummary run, string seat)
    {
        var driver = run.Occupants.FirstOrDefault(occupant => string.Equals(occupant.Seat, Driver, StringComparison.OrdinalIgnoreCase))
            ?? run.Occupants.MinBy(occupant => occupant.Position);
        return seat switch
        {
            Driver => run.Occupants.Where(occupant => occupant == driver),
            "all" => run.Occupants,
            _ => run.Occupants.Where(occupant => occupant != driver),
        };
    }

    private static ClassMeasureRow Row(
        TestRunSummary run, Occupant seat, List<string> codes, ILookup<(string, int?, string), MeasuredValue> values) => new(
        run.Vehicle, run.Test, run.Valid, seat.Position, seat.Seat,
        codes.ConvertAll(code =>
            (values[(run.Test, seat.Position, code)].FirstOrDefault() ?? values[(run.Test, null, code)].FirstOrDefault())?.Value));

    private static double[] Column(List<ClassMeasureRow> rows, int column, bool onceARun) =>
    [
        .. rows.Where(row => row.Values[column] is not null)
            .DistinctBy(row => onceARun ? (row.Test, null) : (row.Test, row.Position))
            .Select(row => row.Values[column]!.Value),
    ];
}
