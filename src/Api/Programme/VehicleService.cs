using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Programme;

/// <summary>Vehicles with their runs, ratings and twins.</summary>
public sealed class VehicleService(IDbContextFactory<ProgrammeDb> contexts)
{
    /// <summary>Vehicles of a class, or all; by key.</summary>
    public async Task<Outcome<IReadOnlyList<VehicleSummary>>> List(
        Viewer viewer, string? vehicleClass = null, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var vehicles = await context.Set<VehicleRow>().AsNoTracking().Include(row => row.Class)
            .Where(row => vehicleClass == null || row.ClassKey == vehicleClass)
            .OrderBy(row => row.Key)
            .ToListAsync(cancellation);
        var runs = await RunIndex.Load(
            context, context.Set<TestRunRow>().Where(run => vehicleClass == null || run.Vehicle!.ClassKey == vehicleClass), cancellation);
        var byVehicle = runs.ToLookup(run => run.Vehicle.Key);
        return Outcome.List<VehicleSummary>(vehicles.ConvertAll(vehicle => Summary(vehicle, [.. byVehicle[vehicle.Key]])));
    }

    public async Task<Outcome<VehicleDetail>> Get(Viewer viewer, string key, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await Find(context, key, cancellation) is { } detail ? detail : Failure.NotFound("vehicle", key);
    }

    /// <summary>A vehicle in full, or null where there is none of that key.</summary>
    internal static async Task<VehicleDetail?> Find(ProgrammeDb context, string key, CancellationToken cancellation)
    {
        var vehicle = await context.Set<VehicleRow>().AsNoTracking().Include(row => row.Class)
            .SingleOrDefaultAsync(row => row.Key == key, cancellation);
        if (vehicle is null)
        {
            return null;
        }

        var runs = await RunIndex.Load(context, context.Set<TestRunRow>().Where(run => run.VehicleKey == key), cancellation);
        var shares = await context.Set<TwinRow>().Where(twin => twin.TwinKey == key)
            .Join(context.Set<VehicleRow>(), twin => twin.VehicleKey, row => row.Key, (_, row) => row)
            .AsNoTracking().FirstOrDefaultAsync(cancellation);
        return new VehicleDetail(
            Summary(vehicle, runs), runs, RatedBy(runs)?.Test, shares is null ? null : RunIndex.Name(shares), await Twins(context, key, cancellation));
    }

    private static async Task<List<Twin>> Twins(ProgrammeDb context, string key, CancellationToken cancellation)
    {
        var rows = await context.Set<TwinRow>().AsNoTracking().Where(twin => twin.VehicleKey == key).OrderBy(twin => twin.TwinKey)
            .Join(context.Set<VehicleRow>(), twin => twin.TwinKey, row => row.Key, (twin, row) => new { twin, row })
            .ToListAsync(cancellation);
        return rows.ConvertAll(pair => new Twin(RunIndex.Name(pair.row), pair.twin.Evidence, pair.twin.AddedBy, pair.twin.AddedAt));
    }

    /// <summary>The run that rates a vehicle: of its valid, rated runs the one with the lowest level; of equals the latest.</summary>
    internal static TestRunSummary? RatedBy(IEnumerable<TestRunSummary> runs) => runs
        .Where(run => run is { Valid: true, Overall: not null })
        .OrderByDescending(run => run.Overall)
        .ThenByDescending(run => run.Date)
        .ThenByDescending(run => run.Test, StringComparer.Ordinal)
        .FirstOrDefault();

    internal static VehicleSummary Summary(VehicleRow vehicle, IReadOnlyList<TestRunSummary> runs) => new(
        RunIndex.Name(vehicle), vehicle.Class!.Title, vehicle.ModelYearFrom, vehicle.ModelYearTo, vehicle.KerbMassKg, runs.Count,
        RatedBy(runs)?.Overall);
}
