using System.Globalization;
using Toepan.Api.Security;

namespace Toepan.Api.Programme;

/// <summary>What releases ask of a person's roles: replies due, embargoes about to end, corrections due.</summary>
internal static class BoardReleaseTasks
{
    private const int ReplyDaysAhead = 3;
    private static readonly TimeSpan EmbargoAhead = TimeSpan.FromHours(72);

    public static IEnumerable<BoardTask> For(Viewer viewer, BoardFacts facts)
    {
        if (!viewer.Is(Role.Communications, Role.Manager, Role.Administrator))
        {
            return [];
        }

        var vehicles = facts.Vehicles.ToDictionary(vehicle => vehicle.Key, RunIndex.Name, StringComparer.Ordinal);
        return
        [
            .. facts.Releases.Replies.Where(reply => vehicles.ContainsKey(reply.VehicleKey) && reply.DueOn.DayNumber - facts.Today.DayNumber <= ReplyDaysAhead)
                .Select(reply => new BoardTask(
                    "", vehicles[reply.VehicleKey],
                    reply.DueOn < facts.Today ? "Go on without the manufacturer: the reply period has ended." : $"Hear the manufacturer: the reply is due on {reply.DueOn:yyyy-MM-dd}.",
                    reply.SentAt, facts.Days(reply.SentAt)) { Address = $"/vehicles/{reply.VehicleKey}" }),
            .. facts.Releases.Waiting.Where(time => vehicles.ContainsKey(time.VehicleKey) && time.VisibleFrom - facts.Now <= EmbargoAhead)
                .Select(time => new BoardTask(
                    time.Test, vehicles[time.VehicleKey], string.Create(CultureInfo.InvariantCulture, $"Be ready: the embargo ends on {time.VisibleFrom.UtcDateTime:yyyy-MM-dd HH:mm} UTC."), facts.Now, 0)),
            .. facts.Releases.Corrections.Join(facts.AllRuns, due => due.Test, run => run.Test, (due, run) => new BoardTask(
                due.Test, run.Vehicle, $"Correct the released sheet: {due.Reason}.", due.Since, facts.Days(due.Since))),
        ];
    }
}
