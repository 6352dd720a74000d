using Microsoft.Extensions.Caching.Memory;
using Npgsql;
using Toepan.Domain.Analysis.Historic;

namespace Toepan.Api.Analysis.Columns;

/// <summary>
/// Historic results as columns, kept in memory once read. Rows of a batch are append-only, so what is kept here can never be out of date; which batches count is
/// asked anew with every question. Bounded: the least used goes first.
/// </summary>
internal sealed class SummaryColumns(NpgsqlDataSource source) : IDisposable
{
    private const long MostBytes = 256L << 20;
    private readonly MemoryCache kept = new(new MemoryCacheOptions { SizeLimit = MostBytes });

    public void Dispose() => kept.Dispose();

    /// <summary>The runs of a batch.</summary>
    public async Task<SummaryBatch> Batch(long id, CancellationToken cancellation)
    {
        if (kept.TryGetValue<SummaryBatch>(id, out var known))
        {
            return known!;
        }

        var batch = await ReadBatch(id, cancellation);
        kept.Set(id, batch, new MemoryCacheEntryOptions { Size = batch.Bytes });
        return batch;
    }

    /// <summary>Columns of some codes of a batch; null where the batch has no value of a code.</summary>
    public async Task<SummaryColumn?[]> Columns(SummaryBatch batch, IReadOnlyList<string> codes, CancellationToken cancellation)
    {
        var columns = codes.Select(code => kept.Get<SummaryColumn>((batch.Id, code))).ToArray();
        string[] missing = [.. codes.Where((code, at) => columns[at] is null && batch.Codes.Contains(code))];
        if (missing.Length == 0)
        {
            return columns;
        }

        var read = await ReadColumns(batch, missing, cancellation);
        foreach (var (code, column) in read)
        {
            kept.Set((batch.Id, code), column, new MemoryCacheEntryOptions { Size = 64 + (sizeof(double) * column.Values.Length) });
        }

        return [.. codes.Select((code, at) => columns[at] ?? read.GetValueOrDefault(code))];
    }

    private async Task<SummaryBatch> ReadBatch(long id, CancellationToken cancellation)
    {
        await using var connection = await source.OpenConnectionAsync(cancellation);
        var seats = await ReadSeats(connection, id, cancellation);
        await using var command = new NpgsqlCommand(
            """
            SELECT r.number, r.test, r.vehicle_key, r.procedure, r.date, r.model_year, r.test_mass_kg, b.codes
            FROM lab.summary_run r JOIN lab.result_batch b ON b.id = r.batch_id WHERE r.batch_id = $1 ORDER BY r.number
            """,
            connection);
        command.Parameters.Add(new NpgsqlParameter<long> { TypedValue = id });
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        var (runs, codes, first) = (new List<SummaryRun>(), Array.Empty<string>(), 0);
        while (await reader.ReadAsync(cancellation))
        {
            codes = runs.Count == 0 ? reader.GetFieldValue<string[]>(7) : codes;
            SummarySeat[] own = [.. seats[reader.GetInt32(0)]];
            runs.Add(new SummaryRun(
                reader.GetString(1), reader.GetString(2), reader.GetString(3), Maybe<DateOnly>(reader, 4), Maybe<int>(reader, 5), Maybe<double>(reader, 6), first, own));
            first += own.Length;
        }

        return new SummaryBatch(id, codes, runs);
    }

    private static async Task<ILookup<int, SummarySeat>> ReadSeats(NpgsqlConnection connection, long id, CancellationToken cancellation)
    {
        await using var command = new NpgsqlCommand("SELECT number, position, dummy FROM lab.summary_occupant WHERE batch_id = $1 ORDER BY number, position", connection);
        command.Parameters.Add(new NpgsqlParameter<long> { TypedValue = id });
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        var seats = new List<(int Number, SummarySeat Seat)>();
        while (await reader.ReadAsync(cancellation))
        {
            seats.Add((reader.GetInt32(0), new SummarySeat(reader.GetInt32(1), await reader.IsDBNullAsync(2, cancellation) ? null : reader.GetString(2))));
        }

        return seats.ToLookup(pair => pair.Number, pair => pair.Seat);
    }

    private async Task<Dictionary<string, SummaryColumn>> ReadColumns(SummaryBatch batch, string[] codes, CancellationToken cancellation)
    {
        var columns = codes.ToDictionary(code => code, code => Empty(batch, code), StringComparer.Ordinal);
        await using var command = source.CreateCommand("SELECT code, number, position, value FROM lab.summary_measure WHERE batch_id = $1 AND code = ANY ($2)");
        command.Parameters.Add(new NpgsqlParameter<long> { TypedValue = batch.Id });
        command.Parameters.Add(new NpgsqlParameter<string[]> { TypedValue = codes });
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        while (await reader.ReadAsync(cancellation))
        {
            var column = columns[reader.GetString(0)];
            var run = reader.GetInt32(1) - 1;
            column.Values[column.OfVehicle ? run : SeatOf(batch.Runs[run], reader.GetInt32(2))] = reader.GetDouble(3);
        }

        return columns;
    }

    private static SummaryColumn Empty(SummaryBatch batch, string code)
    {
        var ofVehicle = HistoricColumns.BelongsToVehicle(code);
        var values = new double[ofVehicle ? batch.Runs.Count : batch.Seats];
        Array.Fill(values, double.NaN);
        return new(ofVehicle, values);
    }

    private static int SeatOf(SummaryRun run, int position)
    {
        var seat = 0;
        while (run.Seats[seat].Position != position)
        {
            seat++;
        }

        return run.FirstSeat + seat;
    }

    private static T? Maybe<T>(NpgsqlDataReader reader, int column)
        where T : struct => reader.IsDBNull(column) ? null : reader.GetFieldValue<T>(column);
}
