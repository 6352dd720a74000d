using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>Planned runs with their state, which follows from specimen, preparation and crash.</summary>
internal static class PlanIndex
{
    public static async Task<IReadOnlyList<PlannedRun>> Load(
        ProgrammeDb context, IQueryable<PlannedRunRow> plans, CancellationToken cancellation)
    {
        var rows = await plans.AsNoTracking().Include(row => row.Vehicle).OrderBy(row => row.PlannedDate).ThenBy(row => row.Test).ToListAsync(cancellation);
        var tests = rows.ConvertAll(row => row.Test);
        var received = await context.Set<SpecimenRow>().Where(row => row.Test != null && tests.Contains(row.Test) && row.ReceivedOn != null)
            .ToDictionaryAsync(row => row.Test!, row => row.ReceivedOn!.Value, cancellation);
        var made = await context.Set<TestRunRow>().Where(run => tests.Contains(run.Test)).Select(run => run.Test).ToListAsync(cancellation);
        return rows.ConvertAll(row => Of(row, received.TryGetValue(row.Test, out var day) ? day : null, made.Contains(row.Test)));
    }

    /// <summary>What the plan alone says of a run: specimen received, prepared, crashed.</summary>
    public static IEnumerable<FactChange> Changes(PlannedRunRow row, DateOnly? received)
    {
        if (received is { } arrival)
        {
            yield return new(Start(arrival), facts => facts with { SpecimenReceived = true });
        }

        if (row.PreparedAt is { } prepared)
        {
            yield return new(prepared, facts => facts with { SpecimenPrepared = true });
        }

        if (row.RanOn is { } ran)
        {
            yield return new(Start(ran), facts => facts with { Crashed = true });
        }
    }

    private static PlannedRun Of(PlannedRunRow row, DateOnly? received, bool made)
    {
        var standing = StateTimeline.Of(row.PlannedAt, Changes(row, received));
        return new PlannedRun(
            row.Test, RunIndex.Name(row.Vehicle!), row.Procedure, row.ProcedureEdition, row.PlannedDate, row.RepeatOf, row.RanOn, row.PreparedBy,
            row.PreparedAt, standing.State.Word(), standing.Since, made, row.Version);
    }

    private static DateTimeOffset Start(DateOnly day) => new(day, TimeOnly.MinValue, TimeSpan.Zero);
}
