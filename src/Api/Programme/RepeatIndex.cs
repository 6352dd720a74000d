using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Programme;

/// <summary>Which runs repeat which, and who has seen what.</summary>
internal static class RepeatIndex
{
    /// <summary>Test codes of runs, made or planned, that repeat a run.</summary>
    public static async Task<IReadOnlyList<string>> RepeatedBy(ProgrammeDb context, string test, CancellationToken cancellation)
    {
        var made = await context.Set<TestRunRow>().Where(run => run.RepeatOf == test).Select(run => run.Test).ToListAsync(cancellation);
        var planned = await context.Set<PlannedRunRow>().Where(run => run.RepeatOf == test).Select(run => run.Test).ToListAsync(cancellation);
        return [.. made.Union(planned).Order(StringComparer.Ordinal)];
    }

    /// <summary>Notes, once a person and run, that its measures or its rating were opened.</summary>
    public static Task NoteSeen(ProgrammeDb context, Viewer viewer, string test, DateTimeOffset at, CancellationToken cancellation) =>
        context.Database.ExecuteSqlAsync(
            $"INSERT INTO lab.measure_view (test, who, first_at) VALUES ({test}, {viewer.Name}, {at}) ON CONFLICT DO NOTHING", cancellation);
}
