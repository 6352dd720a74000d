using Microsoft.Extensions.Caching.Memory;
using Npgsql;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Api.Analysis.Columns;

/// <summary>The measures of one reduction, and who sat in its run. Immutable, as the rows it was read from.</summary>
internal sealed record ReducedRun(
    IReadOnlyList<Occupant> Occupants, double? TestMassKg, string MethodEdition, IReadOnlyDictionary<(string Code, int? Position), double> Values,
    IReadOnlyDictionary<string, string> Units)
{
    private const int BytesAValue = 120;

    public long Bytes => 512 + (BytesAValue * (Values.Count + Units.Count));

    /// <summary>Of a seat, else of the vehicle; null = absent.</summary>
    public double? At(string code, int? position) =>
        Values.TryGetValue((code, position), out var own) ? own : Values.TryGetValue((code, null), out var vehicle) ? vehicle : null;
}

/// <summary>Reductions kept in memory once read: they are append-only, so they cannot be out of date. Which is current is asked anew with every question.</summary>
internal sealed class ReducedRuns(NpgsqlDataSource source) : IDisposable
{
    private const long MostBytes = 256L << 20;
    private readonly MemoryCache kept = new(new MemoryCacheOptions { SizeLimit = MostBytes });

    public void Dispose() => kept.Dispose();

    public async Task<Dictionary<long, ReducedRun>> Get(IReadOnlyList<long> reductions, CancellationToken cancellation)
    {
        var found = new Dictionary<long, ReducedRun>(reductions.Count);
        var missing = new List<long>();
        foreach (var id in reductions)
        {
            if (kept.TryGetValue<ReducedRun>(id, out var known))
            {
                found[id] = known!;
            }
            else
            {
                missing.Add(id);
            }
        }

        if (missing.Count > 0)
        {
            foreach (var (id, run) in await Read([.. missing], cancellation))
            {
                kept.Set(id, run, new MemoryCacheEntryOptions { Size = run.Bytes });
                found[id] = run;
            }
        }

        return found;
    }

    private async Task<IReadOnlyList<(long Id, ReducedRun Run)>> Read(long[] ids, CancellationToken cancellation)
    {
        var values = await ReadValues(ids, cancellation);
        await using var command = source.CreateCommand(
            """
            SELECT d.id, d.method_edition, p.programme FROM lab.reduction d JOIN lab.package p ON p.sha256 = d.package_sha256 WHERE d.id = ANY ($1)
            """);
        command.Parameters.Add(new NpgsqlParameter<long[]> { TypedValue = ids });
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        var runs = new List<(long, ReducedRun)>();
        while (await reader.ReadAsync(cancellation))
        {
            var programme = StoredJson.Read<ProgrammeDocument>(reader.GetString(2));
            var own = values[reader.GetInt64(0)].ToList();
            runs.Add((reader.GetInt64(0), new ReducedRun(
                programme.Occupants, (double?)programme.Conduct.TestMassKg, reader.GetString(1),
                own.Where(row => row.Value is not null).GroupBy(row => (row.Code, row.Position)).ToDictionary(group => group.Key, group => group.First().Value!.Value),
                own.GroupBy(row => row.Code).ToDictionary(group => group.Key, group => group.First().Unit))));
        }

        return runs;
    }

    private async Task<ILookup<long, StoredValue>> ReadValues(long[] ids, CancellationToken cancellation)
    {
        await using var command = source.CreateCommand(
            "SELECT reduction_id, code, position, value, unit FROM lab.measure WHERE reduction_id = ANY ($1) ORDER BY reduction_id, ordinal");
        command.Parameters.Add(new NpgsqlParameter<long[]> { TypedValue = ids });
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        var rows = new List<StoredValue>();
        while (await reader.ReadAsync(cancellation))
        {
            rows.Add(new(
                reader.GetInt64(0), reader.GetString(1), await reader.IsDBNullAsync(2, cancellation) ? null : reader.GetInt32(2),
                await reader.IsDBNullAsync(3, cancellation) ? null : reader.GetDouble(3), reader.GetString(4)));
        }

        return rows.ToLookup(row => row.Reduction);
    }

    private sealed record StoredValue(long Reduction, string Code, int? Position, double? Value, string Unit);
}
