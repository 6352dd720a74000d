using Microsoft.EntityFrameworkCore;
using Npgsql;
using NpgsqlTypes;
using Toepan.Api.Analysis.Historic.Tables;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Analysis.Historic;

namespace Toepan.Api.Analysis.Historic;

/// <summary>Writes a batch of historic results in the transaction of the context: small tables by EF Core, runs and values by COPY.</summary>
internal sealed class ResultStore(ProgrammeDb context)
{
    private NpgsqlConnection Connection => (NpgsqlConnection)context.Database.GetDbConnection();

    /// <summary>Stores what a plan brings; gives the batch its number.</summary>
    public async Task Write(ResultBatchRow batch, ResultPlan plan, CancellationToken cancellation)
    {
        batch.Codes = [.. plan.New.SelectMany(run => run.Values).Select(value => value.Code).Distinct().Order(StringComparer.Ordinal)];
        context.Add(batch);
        context.AddRange(plan.Classes.Select(key => new VehicleClassRow { Key = key, Title = TitleOf(key) }));
        foreach (var vehicle in plan.Vehicles)
        {
            vehicle.CreatedAt = batch.At;
        }

        context.AddRange(plan.Vehicles);
        await context.SaveChangesAsync(cancellation);
        context.AddRange(Origins(batch.Id, HistoricKind.VehicleClass, plan.Classes));
        context.AddRange(Origins(batch.Id, HistoricKind.Procedure, plan.Procedures));
        context.AddRange(Origins(batch.Id, HistoricKind.Vehicle, plan.Vehicles.Select(vehicle => vehicle.Key)));
        await context.SaveChangesAsync(cancellation);
        await CopyRuns(batch.Id, plan.New, cancellation);
        await CopyOccupants(batch.Id, plan.New, cancellation);
        await CopyValues(batch.Id, plan.New, cancellation);
    }

    private static IEnumerable<HistoricOriginRow> Origins(long batch, HistoricKind kind, IEnumerable<string> keys) =>
        keys.Select(key => new HistoricOriginRow { Kind = kind, Key = key, BatchId = batch });

    private async Task CopyRuns(long batch, IReadOnlyList<HistoricRun> runs, CancellationToken cancellation)
    {
        await using var copy = await Connection.BeginBinaryImportAsync(
            "COPY lab.summary_run (batch_id, number, test, vehicle_key, procedure, date, model_year, test_mass_kg, digest) FROM STDIN (FORMAT BINARY)", cancellation);
        for (var at = 0; at < runs.Count; at++)
        {
            var run = runs[at];
            await copy.StartRowAsync(cancellation);
            await copy.WriteAsync(batch, NpgsqlDbType.Bigint, cancellation);
            await copy.WriteAsync(at + 1, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(run.Test, NpgsqlDbType.Text, cancellation);
            await copy.WriteAsync(run.Vehicle, NpgsqlDbType.Text, cancellation);
            await copy.WriteAsync(run.Procedure, NpgsqlDbType.Text, cancellation);
            await copy.WriteAsync(run.Date, NpgsqlDbType.Date, cancellation);
            await copy.WriteAsync(run.ModelYear, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync((double?)run.TestMassKg, NpgsqlDbType.Double, cancellation);
            await copy.WriteAsync(run.Digest, NpgsqlDbType.Text, cancellation);
        }

        await copy.CompleteAsync(cancellation);
    }

    private async Task CopyOccupants(long batch, IReadOnlyList<HistoricRun> runs, CancellationToken cancellation)
    {
        await using var copy = await Connection.BeginBinaryImportAsync(
            "COPY lab.summary_occupant (batch_id, number, position, dummy) FROM STDIN (FORMAT BINARY)", cancellation);
        foreach (var (occupant, number) in runs.SelectMany((run, at) => run.Occupants.Select(occupant => (occupant, at + 1))))
        {
            await copy.StartRowAsync(cancellation);
            await copy.WriteAsync(batch, NpgsqlDbType.Bigint, cancellation);
            await copy.WriteAsync(number, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(occupant.Position, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(occupant.Dummy, NpgsqlDbType.Text, cancellation);
        }

        await copy.CompleteAsync(cancellation);
    }

    // By code, then run: one measure of the batch lies together.
    private async Task CopyValues(long batch, IReadOnlyList<HistoricRun> runs, CancellationToken cancellation)
    {
        await using var copy = await Connection.BeginBinaryImportAsync(
            "COPY lab.summary_measure (batch_id, code, number, position, value) FROM STDIN (FORMAT BINARY)", cancellation);
        var byCode = runs.SelectMany((run, at) => run.Values.Select(value => (Value: value, Number: at + 1)))
            .ToLookup(pair => pair.Value.Code);
        foreach (var (value, number) in byCode.OrderBy(group => group.Key, StringComparer.Ordinal).SelectMany(group => group))
        {
            await copy.StartRowAsync(cancellation);
            await copy.WriteAsync(batch, NpgsqlDbType.Bigint, cancellation);
            await copy.WriteAsync(value.Code, NpgsqlDbType.Text, cancellation);
            await copy.WriteAsync(number, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(value.Position, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(value.Value, NpgsqlDbType.Double, cancellation);
        }

        await copy.CompleteAsync(cancellation);
    }

    /// <summary>delivery-van → Delivery van.</summary>
    private static string TitleOf(string key) => char.ToUpperInvariant(key[0]) + key[1..].Replace('-', ' ').Replace('_', ' ');
}
