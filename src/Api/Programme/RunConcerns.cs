using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Equipment;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Programme.Equipment;

namespace Toepan.Api.Programme;

/// <summary>What speaks against the equipment of runs; each an approval must accept explicitly.</summary>
internal static class RunConcerns
{
    /// <summary>By test code: equipment out of date on the day of the run, and parts of dummies that failed their check.</summary>
    public static async Task<ILookup<string, RunConcern>> Load(ProgrammeDb context, IReadOnlyCollection<string> tests, CancellationToken cancellation)
    {
        var lists = await RunEquipmentIndex.Load(context, tests, cancellation);
        var begun = lists.Count == 0 ? [] : await context.Set<TestRunRow>().AsNoTracking().Where(run => lists.Keys.Contains(run.Test)).ToDictionaryAsync(run => run.Test, run => run.CreatedAt, cancellation);
        return lists.Values.SelectMany(run => OutOfDate(run, begun[run.Test]).Concat(run.InDoubt.Select(doubt => new RunConcern(doubt.Concern, doubt.Text, doubt.Since)))
            .Select(concern => (run.Test, concern))).ToLookup(pair => pair.Test, pair => pair.concern);
    }

    private static IEnumerable<RunConcern> OutOfDate(RunEquipmentList run, DateTimeOffset begun) => run.Equipment
        .Where(used => used.Fault is not null)
        .DistinctBy(used => used.Id)
        .Select(used => new RunConcern(string.Create(CultureInfo.InvariantCulture, $"calibration/{used.Id}"), $"{used.Kind.Word()} {used.Serial} ({used.Title}) {used.Fault}", begun));
}
