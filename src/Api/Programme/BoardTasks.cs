using Toepan.Api.Security;
using Toepan.Domain.Programme;
using Toepan.Domain.Programme.Equipment;

namespace Toepan.Api.Programme;

/// <summary>What the facts ask of a person's roles.</summary>
internal static class BoardTasks
{
    /// <summary>Everything that waits for the viewer, what waits longest first.</summary>
    public static IReadOnlyList<BoardTask> For(Viewer viewer, BoardFacts facts)
    {
        var repeated = facts.AllRuns.Select(run => run.RepeatOf).Concat(facts.AllPlanned.Select(plan => plan.RepeatOf)).ToHashSet();
        return
        [
            .. facts.AllRuns.Select(run => OfRun(run, repeated.Contains(run.Test), facts, viewer))
                .Concat(facts.AllPlanned.Select(plan => OfPlan(plan, facts, viewer)))
                .Concat(facts.Vehicles.Select(vehicle => OfVehicle(vehicle, facts, viewer)))
                .Concat(facts.Calibrations.Select(piece => OfCalibration(piece, facts, viewer)))
                .Concat(BoardReleaseTasks.For(viewer, facts))
                .OfType<BoardTask>()
                .OrderBy(task => task.Since)
                .ThenBy(task => task.Test, StringComparer.Ordinal),
        ];
    }

    private static BoardTask? OfRun(TestRunSummary run, bool repeated, BoardFacts facts, Viewer viewer)
    {
        if (!run.Counts || run.State == TestState.RepeatDue.Word())
        {
            return repeated || !MayArrange(viewer) ? null
                : run.State == TestState.RepeatDue.Word() ? At("Plan the repeat: it is decided and not planned.", $"/plan/new?repeatOf={run.Test}")
                : facts.Decided.Contains(run.Test) ? null
                : At("Decide on a repeat: the run is not valid.", $"/tests/{run.Test}/repeat");
        }

        if (run.Overall is null)
        {
            return MayMeasure(viewer) ? At($"Complete the rating: {run.NotRated ?? "something is missing"}.", $"/tests/{run.Test}") : null;
        }

        return ReviewTask(run, facts, viewer) is { } what ? At(what, $"/tests/{run.Test}/review") : null;

        BoardTask At(string what, string address) => new(run.Test, run.Vehicle, what, run.Since, facts.Days(run.Since)) { Address = address };
    }

    // What waits of a review, for somebody who had no hand in the run.
    private static string? ReviewTask(TestRunSummary run, BoardFacts facts, Viewer viewer)
    {
        var waits = run.State == TestState.Rated.Word() || run.State == TestState.InReview.Word();
        if (!waits || !facts.Reviews.TryGetValue(run.Test, out var review) || string.Equals(review.Uploader, viewer.Name, StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        if (review.Standing.Missing.Count == 0)
        {
            return viewer.Is(Role.Manager, Role.Administrator) ? "Approve the rating: every part is signed." : null;
        }

        var unsigned = review.Standing.Parts.Where(part => part.Act is null).Select(part => part.Part.ToString().ToLowerInvariant()).ToList();
        return !viewer.Is(Role.Reviewer, Role.Manager, Role.Administrator) ? null
            : unsigned.Count > 0 ? $"Review the run: {string.Join(", ", unsigned)}."
            : review.Standing.OpenConcerns.Any() ? "Decide about a concern of the run." : null;
    }

    private static BoardTask? OfPlan(PlannedRun plan, BoardFacts facts, Viewer viewer)
    {
        if (!MayMeasure(viewer))
        {
            return null;
        }

        var address = $"/tests/{plan.Test}/preparation";
        return plan switch
        {
            { RanOn: not null } => Task("Judge the run: its package has not come.", plan.Since),
            _ when plan.PlannedDate < facts.Today => Task("Move or make the run: its day has passed.", Start(plan.PlannedDate)),
            _ when plan.PlannedDate.DayNumber - facts.Today.DayNumber <= DaysAhead && plan.PreparedBy is null =>
                Task($"Prepare the run: it is planned for {plan.PlannedDate:yyyy-MM-dd}.", plan.Since),
            _ => null,
        };

        BoardTask Task(string what, DateTimeOffset since) => new(plan.Test, plan.Vehicle, what, since, facts.Days(since)) { Address = address };
    }

    private static BoardTask? OfVehicle(Tables.VehicleRow vehicle, BoardFacts facts, Viewer viewer)
    {
        var open = vehicle.PlannedDate < facts.Today && !facts.Runs[vehicle.Key].Any() && !facts.Planned[vehicle.Key].Any()
            && !facts.SharedFrom.ContainsKey(vehicle.Key);
        var since = open ? Start(vehicle.PlannedDate!.Value) : default;
        return open && MayArrange(viewer)
            ? new("", RunIndex.Name(vehicle), "Plan its run: the planned day has passed.", since, facts.Days(since)) { Address = $"/plan/new?vehicle={vehicle.Key}" }
            : null;
    }

    private static BoardTask? OfCalibration(BoardCalibration piece, BoardFacts facts, Viewer viewer)
    {
        if (!MayMeasure(viewer) || piece.DueOn.DayNumber - facts.Today.DayNumber > CalibrationDaysAhead)
        {
            return null;
        }

        var (passed, since) = (piece.DueOn < facts.Today, Start(piece.DueOn.AddDays(-CalibrationDaysAhead)));
        return new("", new($"{piece.Kind.Word()} {piece.Serial}", null, null, ""), passed ? "Calibrate it: its calibration has run out." : "Calibrate it: due within a month.", since, facts.Days(since))
        {
            Address = $"/equipment/{piece.Id}",
        };
    }

    private const int DaysAhead = 7;
    private const int CalibrationDaysAhead = 30;

    private static bool MayArrange(Viewer viewer) => viewer.Is(Role.Manager, Role.Administrator);

    private static bool MayMeasure(Viewer viewer) => viewer.Is(Role.Engineer, Role.Manager, Role.Administrator);

    private static DateTimeOffset Start(DateOnly day) => new(day, TimeOnly.MinValue, TimeSpan.Zero);
}
