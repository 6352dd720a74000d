using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Programme;

/// <summary>Specimens: read by every role, kept by engineers, managers and administrators.</summary>
public sealed class SpecimenService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    private const string Act = "keep specimens";

    /// <summary>Specimens of a vehicle, in the order they were entered.</summary>
    public async Task<Outcome<IReadOnlyList<Specimen>>> List(Viewer viewer, string vehicle, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await context.Set<VehicleRow>().FindAsync([vehicle], cancellation) is not { } row)
        {
            return Failure.NotFound("vehicle", vehicle);
        }

        var rows = await context.Set<SpecimenRow>().AsNoTracking().Where(found => found.VehicleKey == vehicle).OrderBy(found => found.Id).ToListAsync(cancellation);
        return Outcome.List<Specimen>(rows.ConvertAll(found => Specimen.Of(found, RunIndex.Name(row))));
    }

    public async Task<Outcome<Specimen>> Get(Viewer viewer, long id, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await Find(context, id, cancellation) is { } row ? await Read(context, row, cancellation) : Unknown(id);
    }

    public async Task<Outcome<Specimen>> Add(Viewer viewer, string vehicle, SpecimenFacts facts, CancellationToken cancellation = default)
    {
        if ((Access.ToMeasure(viewer, Act) ?? facts.Check()) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (!await context.Set<VehicleRow>().AnyAsync(found => found.Key == vehicle, cancellation))
        {
            return Failure.NotFound("vehicle", vehicle);
        }

        var row = new SpecimenRow { VehicleKey = vehicle, CreatedAt = time.GetUtcNow() };
        Specimen.Take(row, facts);
        if (await CheckRun(context, row, cancellation) is { } fault)
        {
            return fault;
        }

        context.Add(row);
        await Edits.Save(context, audit, viewer, () => new AuditNote("add specimen", $"specimen/{row.Id}", null, new { vehicle, facts = Specimen.FactsOf(row) }), cancellation);
        return await Read(context, row, cancellation);
    }

    /// <summary>Changes a specimen that is still at the version its editor saw.</summary>
    public async Task<Outcome<Specimen>> Change(Viewer viewer, long id, SpecimenFacts facts, uint version, CancellationToken cancellation = default)
    {
        if ((Access.ToMeasure(viewer, Act) ?? facts.Check()) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await Find(context, id, cancellation) is not { } row)
        {
            return Unknown(id);
        }

        var (before, current) = (Specimen.FactsOf(row), row.Version);
        Specimen.Take(row, facts);
        if (await CheckRun(context, row, cancellation) is { } fault)
        {
            return fault;
        }

        var kept = current == version && await Edits.Save(
            context, audit, viewer, () => new AuditNote("change specimen", $"specimen/{id}", before, Specimen.FactsOf(row)), cancellation);
        return kept ? await Read(context, row, cancellation) : Edits.ChangedMeanwhile($"specimen {id}", current);
    }

    private static Task<SpecimenRow?> Find(ProgrammeDb context, long id, CancellationToken cancellation) =>
        context.Set<SpecimenRow>().SingleOrDefaultAsync(row => row.Id == id, cancellation);

    private static async Task<Specimen> Read(ProgrammeDb context, SpecimenRow row, CancellationToken cancellation) =>
        Specimen.Of(row, RunIndex.Name((await context.Set<VehicleRow>().FindAsync([row.VehicleKey], cancellation))!));

    private static Failure Unknown(long id) => Failure.NotFound("specimen", $"{id}");

    // A specimen is crashed once, in a run of its own vehicle.
    private static async Task<Failure?> CheckRun(ProgrammeDb context, SpecimenRow row, CancellationToken cancellation)
    {
        if (row.Test is not { } test)
        {
            return null;
        }

        var vehicle = await context.Set<TestRunRow>().Where(run => run.Test == test).Select(run => run.VehicleKey).FirstOrDefaultAsync(cancellation)
            ?? await context.Set<PlannedRunRow>().Where(run => run.Test == test).Select(run => run.VehicleKey).FirstOrDefaultAsync(cancellation);
        if (vehicle != row.VehicleKey)
        {
            return Failure.BadRequest(vehicle is null ? $"There is no run '{test}', made or planned." : $"Run '{test}' is of vehicle '{vehicle}'.");
        }

        return await context.Set<SpecimenRow>().AnyAsync(other => other.Test == test && other.Id != row.Id, cancellation)
            ? new Failure(FailureKind.Conflict, "Run has a specimen", $"Run '{test}' has another specimen already.")
            : null;
    }
}
