using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Programme;

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
            Summary(vehicle, runs), runs, RatedBy(runs)?.Test, shares is null ? null : RunIndex.Name(shares), await Twins(context, key, cancellation))
        {
            CarryOver = await CarriedOver(context, key, cancellation),
            Shared = await Shared(context, key, cancellation),
        };
    }

    private static async Task<CarryOver?> CarriedOver(ProgrammeDb context, string key, CancellationToken cancellation)
    {
        var pair = await context.Set<CarryOverRow>().AsNoTracking().Where(row => row.VehicleKey == key)
            .Join(context.Set<VehicleRow>(), row => row.FromKey, from => from.Key, (row, from) => new { row, from })
            .SingleOrDefaultAsync(cancellation);
        return pair is null ? null : new(RunIndex.Name(pair.from), pair.row.Reason, pair.row.Evidence, pair.row.DecidedBy, pair.row.DecidedAt);
    }

    // The rating a vehicle has from another one: its twin's, else the one carried over.
    private static async Task<SharedRating?> Shared(ProgrammeDb context, string key, CancellationToken cancellation)
    {
        var twin = await context.Set<TwinRow>().AsNoTracking().SingleOrDefaultAsync(row => row.TwinKey == key, cancellation);
        var carried = await context.Set<CarryOverRow>().AsNoTracking().SingleOrDefaultAsync(row => row.VehicleKey == key, cancellation);
        if ((twin?.VehicleKey ?? carried?.FromKey) is not { } source)
        {
            return null;
        }

        var runs = await RunIndex.Load(context, context.Set<TestRunRow>().Where(run => run.VehicleKey == source), cancellation);
        var from = await context.Set<VehicleRow>().AsNoTracking().SingleAsync(row => row.Key == source, cancellation);
        return new(RunIndex.Name(from), RatedBy(runs)?.Overall, RatedBy(runs)?.Test, twin is null ? SharedBecause.CarriedOver : SharedBecause.SameStructure, twin?.Evidence ?? carried!.Evidence);
    }

    private static async Task<List<Twin>> Twins(ProgrammeDb context, string key, CancellationToken cancellation)
    {
        var rows = await context.Set<TwinRow>().AsNoTracking().Where(twin => twin.VehicleKey == key).OrderBy(twin => twin.TwinKey)
            .Join(context.Set<VehicleRow>(), twin => twin.TwinKey, row => row.Key, (twin, row) => new { twin, row })
            .ToListAsync(cancellation);
        return rows.ConvertAll(pair => new Twin(RunIndex.Name(pair.row), pair.twin.Evidence, pair.twin.AddedBy, pair.twin.AddedAt));
    }

    /// <summary>The run that rates a vehicle, by <see cref="RatingRuns"/>.</summary>
    internal static TestRunSummary? RatedBy(IReadOnlyList<TestRunSummary> runs) =>
        RatingRuns.Of(runs.Select(run => new RatingRun(run.Test, run.Date, run.Counts, (int?)run.Overall))) is { } test
            ? runs.First(run => run.Test == test)
            : null;

    internal static VehicleSummary Summary(VehicleRow vehicle, IReadOnlyList<TestRunSummary> runs) => new(
        RunIndex.Name(vehicle), vehicle.Class!.Title, vehicle.ModelYearFrom, vehicle.ModelYearTo, vehicle.KerbMassKg, runs.Count,
        RatedBy(runs)?.Overall)
    {
        Facts = vehicle.Facts(),
        Version = vehicle.Version,
    };
}
