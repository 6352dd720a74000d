using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>Adds and changes vehicles. Managers and administrators.</summary>
public sealed partial class VehicleEditor(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    /// <summary>Adds a vehicle of a new key.</summary>
    public async Task<Outcome<VehicleDetail>> Add(Viewer viewer, string key, VehicleFacts facts, CancellationToken cancellation = default)
    {
        if ((Access.ToArrange(viewer, "add vehicles") ?? CheckKey(key)) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await Check(context, facts, cancellation) is { } fault)
        {
            return fault;
        }

        if (await context.Set<VehicleRow>().AnyAsync(row => row.Key == key, cancellation))
        {
            return new Failure(FailureKind.Conflict, "Vehicle exists", $"There is a vehicle '{key}' already.");
        }

        var vehicle = new VehicleRow { Key = key, CreatedAt = time.GetUtcNow() };
        vehicle.Take(facts);
        context.Add(vehicle);
        await Edits.Save(context, audit, viewer, () => new AuditNote("add vehicle", $"vehicle/{key}", null, vehicle.Facts()), cancellation);
        return (await VehicleService.Find(context, key, cancellation))!;
    }

    /// <summary>Changes a vehicle that is still at the version its editor saw; else the editor is told and nothing is overwritten.</summary>
    public async Task<Outcome<VehicleDetail>> Change(
        Viewer viewer, string key, VehicleFacts facts, uint version, CancellationToken cancellation = default)
    {
        if (Access.ToArrange(viewer, "change vehicles") is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await context.Set<VehicleRow>().SingleOrDefaultAsync(row => row.Key == key, cancellation) is not { } vehicle)
        {
            return Failure.NotFound("vehicle", key);
        }

        if (await Check(context, facts, cancellation) is { } fault)
        {
            return fault;
        }

        var before = vehicle.Facts();
        vehicle.Take(facts);
        if (vehicle.Version == version && before == facts)
        {
            return (await VehicleService.Find(context, key, cancellation))!;
        }

        var current = vehicle.Version;
        var kept = current == version
            && await Edits.Save(context, audit, viewer, () => new AuditNote("change vehicle", $"vehicle/{key}", before, vehicle.Facts()), cancellation);
        return kept ? (await VehicleService.Find(context, key, cancellation))! : Edits.ChangedMeanwhile($"vehicle '{key}'", current);
    }

    /// <summary>The refusal of a key that is none, or null.</summary>
    internal static Failure? CheckKey(string? key) => Key().IsMatch(key ?? "") && key is not ("new" or "import" or "export")
        ? null
        : Failure.BadRequest($"The key '{key}' is not 2 to 100 lower-case letters, digits, dots and hyphens, or is a word the addresses use.");

    private static async Task<Failure?> Check(ProgrammeDb context, VehicleFacts facts, CancellationToken cancellation)
    {
        if (VehicleRules.Faults(facts) is [_, ..] faults)
        {
            return Failure.BadRequest(string.Join(" ", faults));
        }

        return await context.Set<VehicleClassRow>().AnyAsync(row => row.Key == facts.Class, cancellation)
            ? null
            : Failure.BadRequest($"There is no class '{facts.Class}'.");
    }

    [GeneratedRegex(@"\A[a-z0-9][a-z0-9.-]{1,99}\z")]
    private static partial Regex Key();
}
