using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>Plans runs and says how far they are. Managers and administrators plan; engineers also sign preparation and report the crash.</summary>
public sealed class PlanService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    /// <summary>Planned runs whose package has not come, by date; or those of one vehicle, whatever became of them.</summary>
    public async Task<Outcome<IReadOnlyList<PlannedRun>>> List(Viewer viewer, string? vehicle = null, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var plans = await PlanIndex.Load(context, context.Set<PlannedRunRow>().Where(row => vehicle == null || row.VehicleKey == vehicle), cancellation);
        return Outcome.List<PlannedRun>([.. plans.Where(plan => vehicle is not null || !plan.PackageStored)]);
    }

    public async Task<Outcome<PlannedRun>> Get(Viewer viewer, string test, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await Read(context, test, cancellation) is { } plan ? plan : Failure.NotFound("planned run", test);
    }

    /// <summary>Puts a run into the programme. A repeat needs the decision first.</summary>
    public async Task<Outcome<PlannedRun>> Plan(Viewer viewer, NewPlan plan, CancellationToken cancellation = default)
    {
        if (Access.ToArrange(viewer, "plan runs") is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await RunLock.Begin(context, plan.RepeatOf ?? plan.Test, cancellation);
        if (await PlanRules.Check(context, plan, cancellation) is { } fault)
        {
            return fault;
        }

        context.Add(new PlannedRunRow
        {
            Test = plan.Test, VehicleKey = plan.Vehicle, Procedure = plan.Procedure, ProcedureEdition = Edition(plan.Procedure, plan.Date),
            PlannedDate = plan.Date, RepeatOf = plan.RepeatOf, PlannedAt = time.GetUtcNow(), PlannedBy = viewer.Name,
        });
        await context.SaveChangesAsync(cancellation);
        await audit.Append(context, viewer, new AuditNote("plan run", $"test/{plan.Test}", null, plan), cancellation);
        await transaction.CommitAsync(cancellation);
        return (await Read(context, plan.Test, cancellation))!;
    }

    /// <summary>Moves a planned run to another day.</summary>
    public Task<Outcome<PlannedRun>> Move(Viewer viewer, string test, DateOnly date, uint version, CancellationToken cancellation = default) =>
        Change(viewer, Access.ToArrange(viewer, "plan runs"), test, version, "move run", (_, row) =>
        {
            if (row.RanOn is { } ran)
            {
                return Task.FromResult<string?>($"Run '{test}' was made on {ran:yyyy-MM-dd}; it cannot be moved.");
            }

            (row.PlannedDate, row.ProcedureEdition) = (date, Edition(row.Procedure, date));
            return Task.FromResult<string?>(null);
        }, cancellation);

    /// <summary>Signs the preparation off: the specimen is there and every required item is recorded.</summary>
    public Task<Outcome<PlannedRun>> SignPreparation(Viewer viewer, string test, uint version, CancellationToken cancellation = default) =>
        Change(viewer, Access.ToMeasure(viewer, "sign preparation"), test, version, "sign preparation", async (context, row) =>
        {
            if (await PlanRules.NotPrepared(context, row, cancellation) is { } missing)
            {
                return missing;
            }

            (row.PreparedAt, row.PreparedBy) = (time.GetUtcNow(), viewer.Name);
            return null;
        }, cancellation);

    /// <summary>Says on which day the run was made; its package may come later.</summary>
    public Task<Outcome<PlannedRun>> ReportCrash(Viewer viewer, string test, DateOnly day, uint version, CancellationToken cancellation = default) =>
        Change(viewer, Access.ToMeasure(viewer, "report runs"), test, version, "report run", (_, row) =>
        {
            var today = DateOnly.FromDateTime(time.GetUtcNow().UtcDateTime);
            var fault = row.PreparedAt is null ? $"The preparation of '{test}' is not signed off."
                : day > today.AddDays(1) ? $"{day:yyyy-MM-dd} is yet to come."
                : row.RanOn is { } ran && ran != day ? $"Run '{test}' is reported for {ran:yyyy-MM-dd} already." : null;
            (row.RanOn, row.ProcedureEdition) = fault is null ? (day, Edition(row.Procedure, day)) : (row.RanOn, row.ProcedureEdition);
            return Task.FromResult(fault);
        }, cancellation);

    private async Task<Outcome<PlannedRun>> Change(
        Viewer viewer, Failure? forbidden, string test, uint version, string action, Func<ProgrammeDb, PlannedRunRow, Task<string?>> change,
        CancellationToken cancellation)
    {
        if (forbidden is not null)
        {
            return forbidden;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await context.Set<PlannedRunRow>().SingleOrDefaultAsync(found => found.Test == test, cancellation) is not { } row)
        {
            return Failure.NotFound("planned run", test);
        }

        var (before, current) = (Facts(row), row.Version);
        if (current == version && await change(context, row) is { } fault)
        {
            return new Failure(FailureKind.Conflict, "Not possible", fault);
        }

        var kept = current == version
            && await Edits.Save(context, audit, viewer, () => new AuditNote(action, $"test/{test}", before, Facts(row)), cancellation);
        return kept ? (await Read(context, test, cancellation))! : Edits.ChangedMeanwhile($"run '{test}'", current);
    }

    private static int Edition(string procedure, DateOnly day) => ProcedureLibrary.InForce(procedure, day)!.Edition;

    private static object Facts(PlannedRunRow row) => new { row.PlannedDate, row.PreparedAt, row.PreparedBy, row.RanOn };

    private static async Task<PlannedRun?> Read(ProgrammeDb context, string test, CancellationToken cancellation) =>
        (await PlanIndex.Load(context, context.Set<PlannedRunRow>().Where(row => row.Test == test), cancellation)).SingleOrDefault();
}
