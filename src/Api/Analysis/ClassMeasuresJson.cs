namespace Toepan.Api.Analysis;

/// <summary>Vehicles × measures as the contract writes them.</summary>
/// <param name="Query">The address that asked.</param>
/// <param name="MethodEditions">Editions the runs were reduced under; summaries have none.</param>
public sealed record ClassMeasuresJson(
    string Class, string Title, string Seat, string Runs, string? Procedure, IReadOnlyList<string> Measures, IReadOnlyList<ClassMeasureRowJson> Rows,
    IReadOnlyList<ClassMeasureStatistics> Statistics, string Query, IReadOnlyList<string> MethodEditions)
{
    public static ClassMeasuresJson Of(ClassMeasures table, string query) => new(
        table.Class, table.Title, table.Seat, table.Runs, table.Procedure, table.Measures, [.. table.Rows.Select(ClassMeasureRowJson.Of)], table.Statistics, query,
        table.MethodEditions);
}

/// <summary>One occupant of one run or summary result; values in the order of the measures, null = absent.</summary>
/// <param name="Kind">run, or summary: a historic result without channels, never rated.</param>
/// <param name="Valid">Null for a summary.</param>
public sealed record ClassMeasureRowJson(
    string Vehicle, string? Make, string? Model, string Test, ResultKind Kind, bool? Valid, int? Position, string? Seat, string? Dummy, int? ModelYear,
    double? TestMassKg, string Procedure, DateOnly? Date, string? MethodEdition, IReadOnlyList<double?> Values)
{
    public static ClassMeasureRowJson Of(MeasuredRow row) => new(
        row.Vehicle.Key, row.Vehicle.Make, row.Vehicle.Model, row.Test, row.Kind, row.Valid, row.Position, row.Seat, row.Dummy, row.ModelYear, row.TestMassKg, row.Procedure, row.Date,
        row.MethodEdition, row.Values);
}
