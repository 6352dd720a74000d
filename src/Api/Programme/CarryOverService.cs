using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Programme;

/// <summary>A recorded decision that a vehicle carries the rating of an earlier one.</summary>
public sealed record CarryOver(VehicleName From, string Reason, string Evidence, string DecidedBy, DateTimeOffset DecidedAt);

/// <summary>Carries ratings over to vehicles that were changed without touching what rates them. Managers and administrators.</summary>
public sealed class CarryOverService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    public const int LongestText = 2_000;

    /// <summary>Records the decision; a vehicle has one at most, and none where it is a twin or has a run of its own.</summary>
    public async Task<Outcome<CarryOver>> Decide(
        Viewer viewer, string key, string from, string reason, string evidence, CancellationToken cancellation = default)
    {
        var refusal = Access.ToArrange(viewer, "carry ratings over") ?? Texts.Check("A reason", reason, LongestText)
            ?? Texts.Check("The evidence", evidence, LongestText);
        if (refusal is not null)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var vehicles = await context.Set<VehicleRow>().AsNoTracking().Where(row => row.Key == key || row.Key == from).ToListAsync(cancellation);
        if (vehicles.Find(row => row.Key == key) is null)
        {
            return Failure.NotFound("vehicle", key);
        }

        if (key == from || vehicles.Find(row => row.Key == from) is not { } earlier)
        {
            return Failure.BadRequest($"'{from}' is not another vehicle of the programme.");
        }

        if (await Obstacle(context, key, from, cancellation) is { } obstacle)
        {
            return new Failure(FailureKind.Conflict, "Rating cannot be carried over", obstacle);
        }

        var row = new CarryOverRow
        {
            VehicleKey = key, FromKey = from, Reason = reason.Trim(), Evidence = evidence.Trim(), DecidedBy = viewer.Name, DecidedAt = time.GetUtcNow(),
        };
        context.Add(row);
        await Edits.Save(context, audit, viewer, () => new AuditNote("carry over", $"vehicle/{key}", null, new { from, reason = row.Reason, evidence = row.Evidence }), cancellation);
        return new CarryOver(RunIndex.Name(earlier), row.Reason, row.Evidence, row.DecidedBy, row.DecidedAt);
    }

    private static async Task<string?> Obstacle(ProgrammeDb context, string key, string from, CancellationToken cancellation)
    {
        if (await context.Set<CarryOverRow>().AnyAsync(row => row.VehicleKey == key || row.VehicleKey == from || row.FromKey == key, cancellation))
        {
            return $"'{key}' or '{from}' carries a rating over already, or '{key}' hands one on.";
        }

        if (await context.Set<TwinRow>().AnyAsync(row => row.TwinKey == key || row.TwinKey == from, cancellation))
        {
            return $"'{key}' or '{from}' is a twin and shares another vehicle's rating.";
        }

        return await context.Set<TestRunRow>().AnyAsync(run => run.VehicleKey == key, cancellation)
            ? $"'{key}' has runs of its own; they rate it."
            : null;
    }
}
