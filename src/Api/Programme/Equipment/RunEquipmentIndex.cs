using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Programme.Equipment;

namespace Toepan.Api.Programme.Equipment;

/// <summary>Which equipment runs used: assigned by hand, or named by the serial in a channel's header; and what speaks against it.</summary>
internal static class RunEquipmentIndex
{
    // Descriptors of channel headers that name the transducer (ISO/TS 13499, from memory), lower case.
    private static readonly string[] SerialKeys = ["transducer id", "transducer identification", "transducer serial number", "sensor serial number"];

    /// <summary>By test code; runs without known equipment have none.</summary>
    public static async Task<IReadOnlyDictionary<string, RunEquipmentList>> Load(ProgrammeDb context, IReadOnlyCollection<string> tests, CancellationToken cancellation)
    {
        if (!await context.Set<EquipmentRow>().AnyAsync(cancellation))
        {
            return new Dictionary<string, RunEquipmentList>();
        }

        var days = await context.Set<TestRunRow>().AsNoTracking().Where(run => tests.Contains(run.Test)).ToDictionaryAsync(run => run.Test, run => run.Date, cancellation);
        var uses = await Uses(context, tests, cancellation);
        var ids = uses.Select(use => use.Equipment).Distinct().ToList();
        var pieces = await context.Set<EquipmentRow>().AsNoTracking().Include(row => row.Calibrations).Where(row => ids.Contains(row.Id)).ToDictionaryAsync(row => row.Id, cancellation);
        var checks = (await context.Set<DummyCheckRow>().AsNoTracking().Where(row => ids.Contains(row.EquipmentId)).ToListAsync(cancellation)).ToLookup(row => row.EquipmentId, row => row.ToCheck());
        return uses.GroupBy(use => use.Test).Where(run => days.ContainsKey(run.Key)).ToDictionary(
            run => run.Key,
            run => new RunEquipmentList(
                run.Key,
                [.. run.GroupBy(use => (use.Equipment, use.Position)).Select(use => Used(pieces[use.Key.Equipment], use.Key.Position, days[run.Key], [.. use.Select(one => one.Channel).OfType<string>()]))
                    .OrderBy(used => used.Kind).ThenBy(used => used.Serial, StringComparer.Ordinal)],
                [.. run.Where(use => use.Position is not null && pieces[use.Equipment].Kind == EquipmentKind.Dummy)
                    .SelectMany(use => DummyCheckRules.InDoubt(checks[use.Equipment], days[run.Key]).Select(check => Doubt(pieces[use.Equipment], use.Position!.Value, check)))]),
            StringComparer.Ordinal);
    }

    private sealed record Use(string Test, long Equipment, int? Position, string? Channel);

    private static async Task<List<Use>> Uses(ProgrammeDb context, IReadOnlyCollection<string> tests, CancellationToken cancellation)
    {
        var rows = await context.Set<EquipmentUseRow>().AsNoTracking().Where(row => tests.Contains(row.Test)).OrderBy(row => row.Id).ToListAsync(cancellation);
        var assigned = rows.GroupBy(row => (row.Test, row.EquipmentId, row.Position)).Where(use => use.Last().Used)
            .Select(use => new Use(use.Key.Test, use.Key.EquipmentId, use.Key.Position, null));
        var keys = SerialKeys;
        var codes = tests.ToArray();
        var named = await context.Set<EquipmentRow>().AnyAsync(row => row.Kind == EquipmentKind.Transducer, cancellation)
            ? await context.Database.SqlQuery<NamedUse>(
                $"""
                SELECT run.test, e.id AS equipment, c.code AS channel
                FROM (SELECT DISTINCT ON (test) test, rating_id FROM lab.current_rating WHERE test = ANY ({codes}) ORDER BY test, id DESC) run
                JOIN lab.rating r ON r.id = run.rating_id JOIN lab.reduction d ON d.id = r.reduction_id
                JOIN lab.channel c ON c.package_sha256 = d.package_sha256
                CROSS JOIN LATERAL jsonb_array_elements(c.header) h
                JOIN lab.equipment e ON e.kind = 'Transducer' AND e.serial = trim(h ->> 'value')
                WHERE lower(h ->> 'key') = ANY ({keys})
                """).ToListAsync(cancellation)
            : [];
        return [.. assigned, .. named.Select(use => new Use(use.Test, use.Equipment, null, use.Channel))];
    }

    private static RunEquipment Used(EquipmentRow row, int? position, DateOnly day, IReadOnlyList<string> channels) => new(
        row.Id, row.Kind, row.Serial, row.Title, position, Calibration.Fault(row.Calibrations.Select(one => one.ToCalibration()), day), [.. channels.Distinct().Order(StringComparer.Ordinal)]);

    private static PartInDoubt Doubt(EquipmentRow dummy, int position, DummyCheck check) => new(
        position, check.Part,
        string.Create(CultureInfo.InvariantCulture, $"the {check.Part.Word()} of dummy {dummy.Serial} in seat {position} failed its check of {check.On:yyyy-MM-dd}, with no passed check between the run and it"),
        string.Create(CultureInfo.InvariantCulture, $"check/{check.Id}/{position}"), check.RecordedAt);
}

/// <summary>A transducer named in a channel's header.</summary>
internal sealed record NamedUse(string Test, long Equipment, string Channel);
