using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>What stands against a plan.</summary>
internal static class PlanRules
{
    public static async Task<Failure?> Check(ProgrammeDb context, NewPlan plan, CancellationToken cancellation)
    {
        if (!TestCode.IsValid(plan.Test))
        {
            return Failure.BadRequest($"'{plan.Test}' is no test code: 2 to 4 capital letters, a hyphen and 3 to 6 digits.");
        }

        if (ProcedureLibrary.Find(plan.Procedure) is null)
        {
            return Failure.BadRequest($"There is no procedure '{plan.Procedure}'.");
        }

        if (!await context.Set<VehicleRow>().AnyAsync(row => row.Key == plan.Vehicle, cancellation))
        {
            return Failure.BadRequest($"There is no vehicle '{plan.Vehicle}'.");
        }

        if (await context.Set<TestRunRow>().AnyAsync(run => run.Test == plan.Test, cancellation)
            || await context.Set<PlannedRunRow>().AnyAsync(run => run.Test == plan.Test, cancellation))
        {
            return new Failure(FailureKind.Conflict, "Run exists", $"There is a run '{plan.Test}' already.");
        }

        return plan.RepeatOf is null ? null : await CheckRepeat(context, plan, plan.RepeatOf, cancellation);
    }

    /// <summary>What is missing before preparation can be signed off, or null.</summary>
    public static async Task<string?> NotPrepared(ProgrammeDb context, PlannedRunRow row, CancellationToken cancellation)
    {
        if (row.PreparedAt is not null)
        {
            return $"{row.PreparedBy} signed the preparation already.";
        }

        if (!await context.Set<SpecimenRow>().AnyAsync(specimen => specimen.Test == row.Test && specimen.ReceivedOn != null, cancellation))
        {
            return $"No specimen has been received for '{row.Test}'.";
        }

        var edition = ProcedureLibrary.Find(row.Procedure, row.ProcedureEdition)!;
        var missing = PreparationJudge.Missing((await PreparationIndex.Load(context, row.Test, edition, cancellation)).Select(item => item.Verdict));
        return missing.Count == 0 ? null : $"Required and not recorded: {string.Join(", ", missing)}.";
    }

    private static async Task<Failure?> CheckRepeat(ProgrammeDb context, NewPlan plan, string repeated, CancellationToken cancellation)
    {
        var vehicle = await context.Set<TestRunRow>().Where(run => run.Test == repeated).Select(run => run.VehicleKey).FirstOrDefaultAsync(cancellation);
        if (vehicle != plan.Vehicle)
        {
            return Failure.BadRequest(vehicle is null ? $"There is no run '{repeated}' to repeat." : $"Run '{repeated}' is of vehicle '{vehicle}'; a repeat is of the same vehicle.");
        }

        var decided = await context.Set<RepeatDecisionRow>().Where(row => row.Test == repeated).OrderByDescending(row => row.Id)
            .Select(row => (RepeatChoice?)row.Choice).FirstOrDefaultAsync(cancellation);
        if (decided != RepeatChoice.Repeat)
        {
            return new Failure(
                FailureKind.Conflict, "No decision to repeat",
                $"It has not been decided to repeat '{repeated}'. Record the decision first: trigger, evidence and options, before anybody acts on it.");
        }

        var taken = await RepeatIndex.RepeatedBy(context, repeated, cancellation);
        return taken.Count == 0 ? null : new Failure(FailureKind.Conflict, "Repeated already", $"{string.Join(", ", taken)} repeats '{repeated}' already.");
    }
}
