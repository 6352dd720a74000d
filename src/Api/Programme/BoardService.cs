using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>Class × vehicle × state word and since when.</summary>
public sealed class BoardService(IDbContextFactory<ProgrammeDb> contexts, TimeProvider time)
{
    public async Task<Outcome<Board>> Get(Viewer viewer, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var classes = await context.Set<VehicleClassRow>().AsNoTracking().OrderBy(row => row.Title).ToListAsync(cancellation);
        var twins = await context.Set<TwinRow>().Select(twin => twin.TwinKey).ToListAsync(cancellation);
        var vehicles = await context.Set<VehicleRow>().AsNoTracking().OrderBy(row => row.Key).ToListAsync(cancellation);
        var all = await RunIndex.Load(context, context.Set<TestRunRow>(), cancellation);
        var runs = all.ToLookup(run => run.Vehicle.Key);
        var now = time.GetUtcNow();
        var tested = vehicles
            .Where(vehicle => !twins.Contains(vehicle.Key) || runs[vehicle.Key].Any())
            .ToLookup(vehicle => vehicle.ClassKey, vehicle => OnBoard(vehicle, [.. runs[vehicle.Key]], now));
        return new Board(
            Tasks(all, viewer, now),
            classes.ConvertAll(row => new BoardClass(row.Key, row.Title, [.. tested[row.Key]])));
    }

    /// <summary>A vehicle stands where its latest run stands; a run that is not valid counts only where there is no other.</summary>
    private static BoardVehicle OnBoard(VehicleRow vehicle, IReadOnlyList<TestRunSummary> runs, DateTimeOffset now)
    {
        var latest = runs.OrderByDescending(run => run.Valid).ThenByDescending(run => run.Date)
            .ThenByDescending(run => run.Test, StringComparer.Ordinal).FirstOrDefault();
        var since = latest?.Since ?? vehicle.CreatedAt;
        return new BoardVehicle(
            RunIndex.Name(vehicle), latest?.State ?? TestState.Planned.Word(), since, Days(since, now), runs);
    }

    private static IReadOnlyList<BoardTask> Tasks(IReadOnlyList<TestRunSummary> runs, Viewer viewer, DateTimeOffset now)
    {
        var repeated = runs.Select(run => run.RepeatOf).ToHashSet();
        return
        [
            .. runs.Select(run => (Run: run, What: Task(run, repeated.Contains(run.Test), viewer)))
                .Where(task => task.What is not null)
                .OrderBy(task => task.Run.Since)
                .ThenBy(task => task.Run.Test, StringComparer.Ordinal)
                .Select(task => new BoardTask(task.Run.Test, task.Run.Vehicle, task.What!, task.Run.Since, Days(task.Run.Since, now))),
        ];
    }

    /// <summary>What a run asks of this viewer's roles, or null.</summary>
    private static string? Task(TestRunSummary run, bool repeated, Viewer viewer)
    {
        if (!run.Valid)
        {
            return !repeated && viewer.Is(Role.Manager, Role.Administrator) ? "Decide on a repeat: the run is not valid." : null;
        }

        if (run.Overall is null)
        {
            return viewer.Is(Role.Engineer, Role.Manager, Role.Administrator)
                ? $"Complete the rating: {run.NotRated ?? "something is missing"}."
                : null;
        }

        return run.State == TestState.Rated.Word() && viewer.Is(Role.Reviewer, Role.Manager, Role.Administrator) ? "Review the run." : null;
    }

    private static int Days(DateTimeOffset since, DateTimeOffset now) => Math.Max(0, (int)(now - since).TotalDays);
}
