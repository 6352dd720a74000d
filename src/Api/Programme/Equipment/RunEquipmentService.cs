using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Programme;
using Toepan.Domain.Programme.Equipment;

namespace Toepan.Api.Programme.Equipment;

/// <summary>Which equipment a run used. Engineers, managers and administrators say so.</summary>
public sealed class RunEquipmentService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    public async Task<Outcome<RunEquipmentList>> List(Viewer viewer, string test, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await context.Set<TestRunRow>().AnyAsync(run => run.Test == test, cancellation) ? await Read(context, test, cancellation) : Failure.NotFound("test", test);
    }

    /// <summary>Says that the run used a piece (a dummy with its seat), or that saying so was a mistake. What is said already is answered without a new entry.</summary>
    public async Task<Outcome<RunEquipmentList>> Assign(
        Viewer viewer, string test, long equipment, int? position, bool used, CancellationToken cancellation = default)
    {
        if (Access.ToMeasure(viewer, "say which equipment a run used") is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await RunLock.Begin(context, test, cancellation);
        if (await context.Set<TestRunRow>().AsNoTracking().SingleOrDefaultAsync(run => run.Test == test, cancellation) is not { } run)
        {
            return Failure.NotFound("test", test);
        }

        if (await context.Set<EquipmentRow>().AsNoTracking().SingleOrDefaultAsync(row => row.Id == equipment, cancellation) is not { } piece)
        {
            return Failure.NotFound("equipment", $"{equipment}");
        }

        if (Seat(piece, position, StoredJson.Read<Occupant[]>(run.Occupants)) is { } slip)
        {
            return slip;
        }

        var last = await context.Set<EquipmentUseRow>().Where(row => row.Test == test && row.EquipmentId == equipment && row.Position == position).OrderByDescending(row => row.Id).FirstOrDefaultAsync(cancellation);
        if ((last?.Used ?? false) != used)
        {
            context.Add(new EquipmentUseRow { Test = test, EquipmentId = equipment, Position = position, Used = used, By = viewer.Name, At = time.GetUtcNow() });
            await context.SaveChangesAsync(cancellation);
            await audit.Append(context, viewer, new AuditNote(used ? "assign equipment" : "unassign equipment", $"test/{test}", null, new { equipment, piece.Serial, position }), cancellation);
            await transaction.CommitAsync(cancellation);
        }

        return await Read(context, test, cancellation);
    }

    private static Failure? Seat(EquipmentRow piece, int? position, Occupant[] occupants) => piece.Kind == EquipmentKind.Dummy
        ? position is null || !Array.Exists(occupants, occupant => occupant.Position == position)
            ? Failure.BadRequest($"A dummy sits somewhere: position is one of {string.Join(", ", occupants.Select(occupant => occupant.Position))}.")
            : null
        : position is null ? null : Failure.BadRequest($"Only a dummy has a position; equipment {piece.Id} is a {piece.Kind.Word()}.");

    private static async Task<RunEquipmentList> Read(ProgrammeDb context, string test, CancellationToken cancellation) =>
        (await RunEquipmentIndex.Load(context, [test], cancellation)).GetValueOrDefault(test) ?? new(test, [], []);
}
