using Npgsql;
using Toepan.Api.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Analysis.Columns;

/// <summary>A vehicle as rows name it.</summary>
internal sealed record VehicleHead(VehicleName Name, int? ModelYear, double? KerbMassKg);

/// <summary>A run and what is current for it.</summary>
internal sealed record RunHead(
    string Test, string Vehicle, string Procedure, DateOnly Date, long Reduction, bool Valid, ProtectionLevel? Overall);

/// <summary>What of the programme can change, read in one trip with every question: vehicles, what is current for each run, which batches count.</summary>
internal sealed record CurrentState(IReadOnlyDictionary<string, VehicleHead> Vehicles, IReadOnlyList<RunHead> Runs, IReadOnlyList<long> Batches)
{
    private const string VehicleSql = "SELECT key, class_key, make, model, model_year_from, kerb_mass_kg::float8 FROM lab.vehicle WHERE $1 OR class_key = ANY ($2)";

    private const string RunSql =
        """
        SELECT t.test, t.vehicle_key, t.procedure, t.date, r.reduction_id, r.valid, r.overall
        FROM lab.test_run t
        JOIN lab.vehicle v ON v.key = t.vehicle_key
        JOIN LATERAL (SELECT rating_id FROM lab.current_rating WHERE test = t.test ORDER BY id DESC LIMIT 1) c ON true
        JOIN lab.rating r ON r.id = c.rating_id
        WHERE ($1 OR v.class_key = ANY ($2)) AND ($3::text IS NULL OR t.procedure = $3)
        """;

    private const string BatchSql =
        "SELECT id FROM lab.result_batch b WHERE NOT EXISTS (SELECT FROM lab.result_withdrawal w WHERE w.batch_id = b.id) ORDER BY id";

    public static async Task<CurrentState> Read(NpgsqlDataSource source, MeasureQuestion question, CancellationToken cancellation)
    {
        await using var batch = source.CreateBatch();
        batch.BatchCommands.Add(Command(VehicleSql, question));
        batch.BatchCommands.Add(Command(RunSql, question, new NpgsqlParameter { Value = (object?)question.Procedure ?? DBNull.Value, NpgsqlDbType = NpgsqlTypes.NpgsqlDbType.Text }));
        batch.BatchCommands.Add(new NpgsqlBatchCommand(BatchSql));
        await using var reader = await batch.ExecuteReaderAsync(cancellation);
        var vehicles = new Dictionary<string, VehicleHead>(StringComparer.Ordinal);
        while (await reader.ReadAsync(cancellation))
        {
            vehicles[reader.GetString(0)] = new(
                new(reader.GetString(0), Text(reader, 2), Text(reader, 3), reader.GetString(1)), reader.IsDBNull(4) ? null : reader.GetInt32(4),
                reader.IsDBNull(5) ? null : reader.GetDouble(5));
        }

        await reader.NextResultAsync(cancellation);
        var runs = new List<RunHead>();
        while (await reader.ReadAsync(cancellation))
        {
            runs.Add(new(
                reader.GetString(0), reader.GetString(1), reader.GetString(2), reader.GetFieldValue<DateOnly>(3), reader.GetInt64(4), reader.GetBoolean(5),
                Text(reader, 6) is { } level ? Enum.Parse<ProtectionLevel>(level) : null));
        }

        await reader.NextResultAsync(cancellation);
        var batches = new List<long>();
        while (await reader.ReadAsync(cancellation))
        {
            batches.Add(reader.GetInt64(0));
        }

        return new(vehicles, runs, batches);
    }

    private static NpgsqlBatchCommand Command(string sql, MeasureQuestion question, params NpgsqlParameter[] more)
    {
        var command = new NpgsqlBatchCommand(sql);
        command.Parameters.Add(new NpgsqlParameter<bool> { TypedValue = question.Classes.Count == 0 });
        command.Parameters.Add(new NpgsqlParameter<string[]> { TypedValue = [.. question.Classes] });
        foreach (var parameter in more)
        {
            command.Parameters.Add(parameter);
        }

        return command;
    }

    private static string? Text(NpgsqlDataReader reader, int column) => reader.IsDBNull(column) ? null : reader.GetString(column);
}
