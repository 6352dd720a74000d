using Toepan.Api.Analysis;
using Toepan.Api.Programme;

namespace Toepan.Web.Pages.Analysis;

/// <summary>Runs that can be set side by side, and the address that does so.</summary>
public sealed record RepeatGroup(VehicleName Vehicle, IReadOnlyList<TestRunSummary> Runs)
{
    public string Address => $"/repeats?tests={string.Join(',', Runs.Select(run => run.Test))}";

    /// <summary>"FO-0005 and FO-0006 side by side".</summary>
    public string Text => $"{string.Join(", ", Runs.SkipLast(1).Select(run => run.Test))} and {Runs[^1].Test} side by side";
}

/// <summary>Two or more runs of one vehicle by one procedure.</summary>
public static class RepeatGroups
{
    /// <summary>In the order of vehicles; of more runs than can be compared, the latest.</summary>
    public static IReadOnlyList<RepeatGroup> Of(IEnumerable<TestRunSummary> runs) =>
    [
        .. runs.GroupBy(run => (run.Vehicle.Key, run.Procedure))
            .Where(group => group.Count() > 1)
            .Select(group => new RepeatGroup(group.First().Vehicle, [.. group.OrderBy(run => run.Date).ThenBy(run => run.Test, StringComparer.Ordinal).TakeLast(RepeatService.MostRuns)])),
    ];
}
