using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Programme.Equipment;

namespace Toepan.Api.Programme.Equipment;

/// <summary>Equipment with its calibrations and checks: read by every role, kept by engineers, managers and administrators.</summary>
public sealed class EquipmentService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    private const string Keep = "keep equipment";
    public const int LongestText = 200;
    public const int LongestNote = 2_000;

    /// <summary>Everything, by kind and serial.</summary>
    public async Task<Outcome<IReadOnlyList<EquipmentItem>>> List(Viewer viewer, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var items = await Items(context, context.Set<EquipmentRow>(), cancellation);
        return Outcome.List<EquipmentItem>([.. items.OrderBy(item => item.Kind).ThenBy(item => item.Serial, StringComparer.Ordinal)]);
    }

    public async Task<Outcome<EquipmentDetail>> Get(Viewer viewer, long id, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await Detail(context, id, cancellation) is { } detail ? detail : Unknown(id);
    }

    public async Task<Outcome<EquipmentDetail>> Add(Viewer viewer, EquipmentFacts facts, CancellationToken cancellation = default)
    {
        if ((Access.ToMeasure(viewer, Keep) ?? Check(facts)) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await Taken(context, facts, 0, cancellation) is { } taken)
        {
            return taken;
        }

        var row = new EquipmentRow { CreatedAt = time.GetUtcNow() };
        Take(row, facts);
        context.Add(row);
        await Edits.Save(context, audit, viewer, () => new AuditNote("add equipment", Entity(row.Id), null, facts), cancellation);
        return (await Detail(context, row.Id, cancellation))!;
    }

    /// <summary>Changes a piece that is still at the version its editor saw.</summary>
    public async Task<Outcome<EquipmentDetail>> Change(Viewer viewer, long id, EquipmentFacts facts, uint version, CancellationToken cancellation = default)
    {
        if ((Access.ToMeasure(viewer, Keep) ?? Check(facts)) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await context.Set<EquipmentRow>().SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } row)
        {
            return Unknown(id);
        }

        if (await Taken(context, facts, id, cancellation) is { } taken)
        {
            return taken;
        }

        var (before, current) = (new EquipmentFacts(row.Kind, row.Serial, row.Title, row.Range, row.Note, row.RetiredOn), row.Version);
        Take(row, facts);
        var kept = current == version && await Edits.Save(context, audit, viewer, () => new AuditNote("change equipment", Entity(id), before, facts), cancellation);
        return kept ? (await Detail(context, id, cancellation))! : Edits.ChangedMeanwhile($"equipment {id}", current);
    }

    /// <summary>Records a calibration; a wrong one is answered by a later one of the same day.</summary>
    public Task<Outcome<EquipmentDetail>> Calibrate(Viewer viewer, long id, Calibration calibration, CancellationToken cancellation = default) =>
        Record(viewer, id, "calibrate", calibration,
            Texts.Check("A certificate", calibration.Certificate, LongestText)
                ?? (calibration.DueOn < calibration.On ? Failure.BadRequest($"It is due on {calibration.DueOn:yyyy-MM-dd}, before it was done on {calibration.On:yyyy-MM-dd}.") : null),
            _ => new CalibrationRow { EquipmentId = id, On = calibration.On, DueOn = calibration.DueOn, Certificate = calibration.Certificate.Trim(), By = viewer.Name, At = time.GetUtcNow() }, cancellation);

    /// <summary>Records a check of a dummy's part after a test.</summary>
    public Task<Outcome<EquipmentDetail>> CheckPart(Viewer viewer, long id, DummyPart part, bool passed, DateOnly on, string? note, CancellationToken cancellation = default) =>
        Record(viewer, id, "check dummy", new { part, passed, on, note },
            passed && string.IsNullOrWhiteSpace(note) ? null : Texts.Check("What was found", note, LongestNote),
            row => row.Kind == EquipmentKind.Dummy
                ? new DummyCheckRow { EquipmentId = id, Part = part, Passed = passed, On = on, Note = note?.Trim() ?? "", By = viewer.Name, At = time.GetUtcNow() }
                : null, cancellation);

    private async Task<Outcome<EquipmentDetail>> Record(
        Viewer viewer, long id, string act, object after, Failure? invalid, Func<EquipmentRow, object?> make, CancellationToken cancellation)
    {
        if ((Access.ToMeasure(viewer, Keep) ?? invalid) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await context.Set<EquipmentRow>().AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } equipment)
        {
            return Unknown(id);
        }

        if (make(equipment) is not { } made)
        {
            return Failure.BadRequest($"Equipment {id} is a {equipment.Kind.Word()}: only dummies have parts to check.");
        }

        context.Add(made);
        await Edits.Save(context, audit, viewer, () => new AuditNote(act, Entity(id), null, after), cancellation);
        return (await Detail(context, id, cancellation))!;
    }

    private static async Task<Failure?> Taken(ProgrammeDb context, EquipmentFacts facts, long id, CancellationToken cancellation) =>
        await context.Set<EquipmentRow>().AnyAsync(row => row.Kind == facts.Kind && row.Serial == facts.Serial.Trim() && row.Id != id, cancellation)
            ? new Failure(FailureKind.Conflict, "Serial taken", $"There is a {facts.Kind.Word()} with serial '{facts.Serial.Trim()}' already.")
            : null;

    private static Failure? Check(EquipmentFacts facts) =>
        Texts.Check("A serial", facts.Serial, LongestText) ?? Texts.Check("A title", facts.Title, LongestText)
        ?? (string.IsNullOrWhiteSpace(facts.Range) ? null : Texts.Check("A range", facts.Range, LongestText))
        ?? (string.IsNullOrWhiteSpace(facts.Note) ? null : Texts.Check("A note", facts.Note, LongestNote));

    private static void Take(EquipmentRow row, EquipmentFacts facts) => (row.Kind, row.Serial, row.Title, row.Range, row.Note, row.RetiredOn) =
        (facts.Kind, facts.Serial.Trim(), facts.Title.Trim(), Blank(facts.Range), Blank(facts.Note), facts.RetiredOn);

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private static string Entity(long id) => string.Create(CultureInfo.InvariantCulture, $"equipment/{id}");

    private static Failure Unknown(long id) => Failure.NotFound("equipment", $"{id}");

    private static async Task<EquipmentDetail?> Detail(ProgrammeDb context, long id, CancellationToken cancellation)
    {
        if ((await Items(context, context.Set<EquipmentRow>().Where(row => row.Id == id), cancellation)).SingleOrDefault() is not { } item)
        {
            return null;
        }

        var calibrations = await context.Set<CalibrationRow>().AsNoTracking().Where(row => row.EquipmentId == id).OrderByDescending(row => row.On).ThenByDescending(row => row.Id)
            .Select(row => new CalibrationEntry(row.Id, row.On, row.DueOn, row.Certificate, row.By, row.At)).ToListAsync(cancellation);
        var checks = await context.Set<DummyCheckRow>().AsNoTracking().Where(row => row.EquipmentId == id).OrderByDescending(row => row.On).ThenByDescending(row => row.Id)
            .Select(row => new DummyCheckEntry(row.Id, row.Part, row.Passed, row.On, row.Note, row.By, row.At)).ToListAsync(cancellation);
        var uses = await context.Set<EquipmentUseRow>().AsNoTracking().Where(row => row.EquipmentId == id).OrderBy(row => row.Id).ToListAsync(cancellation);
        return new(item, calibrations, checks, [.. uses.GroupBy(row => (row.Test, row.Position)).Where(use => use.Last().Used).Select(use => use.Key.Test).Distinct().Order(StringComparer.Ordinal)]);
    }

    private static async Task<List<EquipmentItem>> Items(ProgrammeDb context, IQueryable<EquipmentRow> rows, CancellationToken cancellation) => await rows.AsNoTracking()
        .Select(row => new EquipmentItem(
            row.Id, row.Kind, row.Serial, row.Title, row.Range, row.Note, row.RetiredOn,
            row.Calibrations.OrderByDescending(one => one.On).ThenByDescending(one => one.DueOn).Select(one => (DateOnly?)one.DueOn).FirstOrDefault(),
            context.Set<EquipmentUseRow>().Where(use => use.EquipmentId == row.Id && use.Used).Select(use => use.Test).Distinct().Count(), row.Version))
        .ToListAsync(cancellation);
}
