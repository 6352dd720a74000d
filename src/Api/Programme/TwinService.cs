using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Programme;

/// <summary>Vehicles of the same structure.</summary>
public sealed partial class TwinService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    /// <summary>Longest evidence text, characters.</summary>
    public const int LongestEvidence = 2_000;

    /// <summary>
    /// Records that another vehicle has the same structure, with the evidence; an unknown one is created in the same class.
    /// Managers and administrators only.
    /// </summary>
    public async Task<Outcome<Twin>> Add(Viewer viewer, string key, NewTwin twin, CancellationToken cancellation = default)
    {
        if ((Access.ToArrange(viewer, "record twins") ?? Check(key, twin)) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await context.Set<VehicleRow>().SingleOrDefaultAsync(row => row.Key == key, cancellation) is not { } vehicle)
        {
            return Failure.NotFound("vehicle", key);
        }

        if (await context.Set<TwinRow>().AnyAsync(
            row => row.TwinKey == twin.Key || row.TwinKey == key || row.VehicleKey == twin.Key, cancellation))
        {
            return new Failure(FailureKind.Conflict, "Twin exists", $"'{twin.Key}' or '{key}' is a twin already, or '{twin.Key}' has twins of its own.");
        }

        return await Write(context, vehicle, twin, viewer, cancellation);
    }

    private async Task<Outcome<Twin>> Write(
        ProgrammeDb context, VehicleRow vehicle, NewTwin twin, Viewer viewer, CancellationToken cancellation)
    {
        var at = time.GetUtcNow();
        var other = await context.Set<VehicleRow>().SingleOrDefaultAsync(row => row.Key == twin.Key, cancellation);
        if (other is null)
        {
            other = new VehicleRow
            {
                Key = twin.Key, ClassKey = vehicle.ClassKey, Make = twin.Make, Model = twin.Model, ModelYearFrom = twin.ModelYearFrom,
                ModelYearTo = twin.ModelYearTo, CreatedAt = at,
            };
            context.Add(other);
        }

        context.Add(new TwinRow
        {
            VehicleKey = vehicle.Key, TwinKey = twin.Key, Evidence = twin.Evidence.Trim(), AddedBy = viewer.Name, AddedAt = at,
        });
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await context.SaveChangesAsync(cancellation);
        var note = new AuditNote("twin", $"vehicle/{vehicle.Key}", null, new { twin = twin.Key, evidence = twin.Evidence.Trim() });
        await audit.Append(context, viewer, note, cancellation);
        await transaction.CommitAsync(cancellation);
        return new Twin(RunIndex.Name(other), twin.Evidence.Trim(), viewer.Name, at);
    }

    private static Failure? Check(string key, NewTwin twin)
    {
        if (!Key().IsMatch(twin.Key ?? "") || twin.Key == key)
        {
            return Failure.BadRequest($"The twin's key '{twin.Key}' is not 2 to 100 lower-case letters, digits, dots and hyphens, or is the vehicle itself.");
        }

        return Texts.Check("The evidence", twin.Evidence, LongestEvidence);
    }

    [GeneratedRegex(@"\A[a-z0-9][a-z0-9.-]{1,99}\z")]
    private static partial Regex Key();
}
