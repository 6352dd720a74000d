namespace Toepan.Api.Analysis;

/// <summary>Vehicles × measures as the contract writes them.</summary>
public sealed record ClassMeasuresJson(
    string Class, string Title, string Seat, string Runs, IReadOnlyList<string> Measures, IReadOnlyList<ClassMeasureRowJson> Rows,
    IReadOnlyList<ClassMeasureStatistics> Statistics)
{
    public static ClassMeasuresJson Of(ClassMeasures table) => new(
        table.Class, table.Title, table.Seat, table.Runs, table.Measures, [.. table.Rows.Select(ClassMeasureRowJson.Of)], table.Statistics);
}

/// <summary>One occupant of one run; values in the order of the measures, null = absent.</summary>
public sealed record ClassMeasureRowJson(
    string Vehicle, string? Make, string? Model, string Test, bool Valid, int? Position, string? Seat, IReadOnlyList<double?> Values)
{
    public static ClassMeasureRowJson Of(ClassMeasureRow row) => new(
        row.Vehicle.Key, row.Vehicle.Make, row.Vehicle.Model, row.Test, row.Valid, row.Position, row.Seat, row.Values);
}
