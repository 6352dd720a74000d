using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>What waits for the viewer; class × vehicle × state word and since when; how much of each class is tested.</summary>
public sealed class BoardService(IDbContextFactory<ProgrammeDb> contexts, TimeProvider time)
{
    public async Task<Outcome<Board>> Get(Viewer viewer, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var facts = await BoardFacts.Load(context, time.GetUtcNow(), cancellation);
        var classes = await context.Set<VehicleClassRow>().AsNoTracking().OrderBy(row => row.Title).ToListAsync(cancellation);
        return new Board(BoardTasks.For(viewer, facts), classes.ConvertAll(row => Class(row, facts)));
    }

    private static BoardClass Class(VehicleClassRow row, BoardFacts facts)
    {
        var vehicles = facts.Vehicles.Where(vehicle => vehicle.ClassKey == row.Key).ToList();
        return new BoardClass(row.Key, row.Title, vehicles.ConvertAll(vehicle => OnBoard(vehicle, facts)))
        {
            Coverage = Coverage.Of(vehicles.ConvertAll(vehicle => new CoveredVehicle(IsTested(vehicle.Key, facts), vehicle.SalesSharePercent))),
        };
    }

    private static bool IsTested(string key, BoardFacts facts) =>
        facts.Runs[key].Any(run => run.Counts)
        || (facts.SharedFrom.TryGetValue(key, out var source) && facts.Runs[source].Any(run => run.Counts));

    /// <summary>A vehicle stands where its latest run stands, a run that is not valid only where there is no other; else where its next planned run stands.</summary>
    private static BoardVehicle OnBoard(VehicleRow vehicle, BoardFacts facts)
    {
        var shared = facts.Runs[vehicle.Key].Any() || !facts.SharedFrom.TryGetValue(vehicle.Key, out var source) ? null : facts.Vehicles.Single(other => other.Key == source);
        IReadOnlyList<TestRunSummary> runs = [.. facts.Runs[(shared ?? vehicle).Key]];
        IReadOnlyList<PlannedRun> planned = [.. facts.Planned[vehicle.Key]];
        var latest = runs.OrderByDescending(run => run.Valid).ThenByDescending(run => run.Date)
            .ThenByDescending(run => run.Test, StringComparer.Ordinal).FirstOrDefault();
        var next = planned.Count > 0 ? planned[0] : null;
        var since = latest?.Since ?? next?.Since ?? vehicle.CreatedAt;
        var state = latest?.State ?? next?.State ?? TestState.Planned.Word();
        return new BoardVehicle(RunIndex.Name(vehicle), state, since, facts.Days(since), runs)
        {
            SharedFrom = shared is null ? null : RunIndex.Name(shared), Planned = planned, PlannedDate = runs.Count + planned.Count == 0 ? vehicle.PlannedDate : null,
        };
    }
}
