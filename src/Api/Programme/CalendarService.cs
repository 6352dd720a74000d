using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Programme;

/// <summary>Planned runs as a calendar (RFC 5545): a whole-day entry each, with an identity that stays when the run is moved.</summary>
public sealed class CalendarService(IDbContextFactory<ProgrammeDb> contexts, TimeProvider time)
{
    private const string Product = "-//Toepan//Planned runs//EN";

    /// <summary>Text of the calendar: planned runs that are not made, and vehicles with a planned day but no run yet.</summary>
    public async Task<Outcome<string>> Feed(Viewer viewer, string? vehicleClass, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var facts = await BoardFacts.Load(context, time.GetUtcNow(), cancellation);
        var calendar = new Calendar { ProductId = Product };
        var runs = facts.AllPlanned.Where(plan => plan.RanOn is null && InClass(plan.Vehicle.Class))
            .Select(plan => Entry($"run-{plan.Test}", plan.PlannedDate, $"{plan.Test} {plan.Vehicle.Title}", $"{plan.State}; {plan.Procedure} edition {plan.ProcedureEdition}", facts.Now));
        var vehicles = facts.Vehicles
            .Where(row => row.PlannedDate is not null && InClass(row.ClassKey) && !facts.Runs[row.Key].Any() && !facts.Planned[row.Key].Any())
            .Select(row => Entry($"vehicle-{row.Key}", row.PlannedDate!.Value, RunIndex.Name(row).Title, "planned; no run code yet", facts.Now));
        calendar.Events.AddRange(runs.Concat(vehicles).OrderBy(entry => entry.Uid, StringComparer.Ordinal));
        return new CalendarSerializer().SerializeToString(calendar)!;

        bool InClass(string key) => vehicleClass is null || key == vehicleClass;
    }

    private static CalendarEvent Entry(string identity, DateOnly day, string summary, string description, DateTimeOffset at) => new()
    {
        Uid = $"{identity}@toepan",
        DtStamp = new CalDateTime(at.UtcDateTime, "UTC"),
        Start = new CalDateTime(day),
        End = new CalDateTime(day.AddDays(1)),
        Summary = summary,
        Description = description,
    };
}
