using System.Data;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Toepan.Api.Packages;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Measures;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings.Schemes;

/// <summary>A run's current rating and what it was made from, for rating it otherwise.</summary>
internal sealed record RatedRun(
    string Test, long RatingId, string Vehicle, string Class, string Procedure, ProtectionLevel? Overall, string Scheme, string? SchemeSha256, RatingInputs Inputs);

/// <summary>The stored facts of all current runs at once; of the measures only those asked for.</summary>
internal static class RatedRuns
{
    /// <param name="codes">Measures to load.</param>
    /// <param name="procedure">Only runs by this procedure.</param>
    public static async Task<IReadOnlyList<RatedRun>> Load(ProgrammeDb context, IReadOnlyCollection<string> codes, string procedure, CancellationToken cancellation)
    {
        var rows = await context.Set<CurrentRatingRow>().AsNoTracking()
            .Where(row => !context.Set<CurrentRatingRow>().Any(later => later.Test == row.Test && later.Id > row.Id))
            .Join(
                context.Set<Programme.Tables.TestRunRow>().Where(run => run.Procedure == procedure), row => row.Test, run => run.Test,
                (row, run) => new
                {
                    row.Test, row.RatingId, Vehicle = run.Vehicle!.Make + " " + run.Vehicle.Model, Class = run.Vehicle.ClassKey, run.Procedure, run.Occupants,
                    row.Rating!.Overall, row.Rating.Scheme, row.Rating.SchemeSha256, row.Rating.Valid, row.Rating.ReductionId, row.Rating.Reduction!.PackageSha256,
                })
            .OrderBy(row => row.Test).ToListAsync(cancellation);
        var measures = await Measures(context, [.. rows.Select(row => row.ReductionId)], [.. codes], cancellation);
        var findings = await RunFindings.Standing(context, rows.ToDictionary(row => row.Test, row => row.PackageSha256), cancellation);
        return rows.ConvertAll(row => new RatedRun(
            row.Test, row.RatingId, row.Vehicle, row.Class, row.Procedure, row.Overall, row.Scheme, row.SchemeSha256,
            new(row.Valid, StoredJson.Read<Occupant[]>(row.Occupants), measures.GetValueOrDefault(row.ReductionId) ?? [], findings[row.Test])));
    }

    // Straight from the connection: a programme of thousands of runs has a million measures.
    private static async Task<Dictionary<long, List<Measure>>> Measures(ProgrammeDb context, long[] reductions, string[] codes, CancellationToken cancellation)
    {
        const string Query =
            "SELECT reduction_id, code, position, value, unit, absent, at_least, at_most, bounds_because, detail, uncertainty FROM lab.measure "
            + "WHERE reduction_id = ANY ($1) AND code = ANY ($2) ORDER BY reduction_id, ordinal";
        var connection = (NpgsqlConnection)context.Database.GetDbConnection();
        var opened = connection.State == ConnectionState.Closed;
        if (opened)
        {
            await context.Database.OpenConnectionAsync(cancellation);
        }

        await using var command = new NpgsqlCommand(Query, connection) { Parameters = { new() { Value = reductions }, new() { Value = codes } } };
        var found = new Dictionary<long, List<Measure>>();
        await using (var reader = await command.ExecuteReaderAsync(cancellation))
        {
            while (await reader.ReadAsync(cancellation))
            {
                var reduction = reader.GetInt64(0);
                if (!found.TryGetValue(reduction, out var list))
                {
                    found[reduction] = list = [];
                }

                list.Add(ToMeasure(reader));
            }
        }

        if (opened)
        {
            await context.Database.CloseConnectionAsync();
        }

        return found;
    }

    private static Measure ToMeasure(NpgsqlDataReader reader) => new()
    {
        Code = string.Intern(reader.GetString(1)), Position = Number<int>(reader, 2), Value = Number<double>(reader, 3), Unit = reader.GetString(4), Absent = Text(reader, 5),
        Bounds = Text(reader, 8) is { } because ? new MeasureBounds(Number<double>(reader, 6), Number<double>(reader, 7), because) : null,
        Detail = Text(reader, 9), Uncertainty = Number<double>(reader, 10),
    };

    private static string? Text(NpgsqlDataReader reader, int column) => reader.IsDBNull(column) ? null : reader.GetString(column);

    private static T? Number<T>(NpgsqlDataReader reader, int column)
        where T : struct => reader.IsDBNull(column) ? null : reader.GetFieldValue<T>(column);
}
