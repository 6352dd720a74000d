using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages.Attachments;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages;

/// <summary>
/// The one transaction that takes a computed package in. Under the lock of the test code: whatever is stored of that code when it
/// begins decides between new, same bytes, conflict and replacement.
/// </summary>
internal sealed class PackageIngest(ProgrammeDb context, UploadSpool spool, IncomingPackage incoming, UploadOptions options)
{
    private ProgrammeDocument Programme => incoming.Package.Programme;

    /// <summary>Why the package may not be taken in as things stand, or null. Same bytes as the current package: no failure, nothing to do.</summary>
    public async Task<IngestDecision> Decide(CancellationToken cancellation)
    {
        var sha256 = incoming.Upload.Sha256;
        var current = await CurrentRun.Find(context, Programme.Test, cancellation);
        if (current is null)
        {
            return options.Replaces is null ? IngestDecision.New : new(null, NothingToReplace());
        }

        if (current.PackageSha256 == sha256)
        {
            return new(current, null);
        }

        return options.Replaces == current.PackageSha256 ? new(null, null, current.PackageSha256) : new(null, await Conflict(current, cancellation));
    }

    /// <summary>Writes everything; the caller commits.</summary>
    public async Task Store(ComputedRun run, RunCause cause, CancellationToken cancellation)
    {
        await EnsureVehicle(cause.At, cancellation);
        await WriteRun(cause.At, cancellation);
        if (!await context.Set<PackageRow>().AnyAsync(row => row.Sha256 == incoming.Upload.Sha256, cancellation))
        {
            await PackageArchive.Write(context, incoming, cause.By, cause.At, cancellation);
            await PackageAttachmentIngest.Write(context, spool, incoming, cause.By, cause.At, cancellation);
        }

        await RunResults.Write(context, incoming.Upload.Sha256, incoming.Problems, run, cause, cancellation);
    }

    private async Task EnsureVehicle(DateTimeOffset at, CancellationToken cancellation)
    {
        var vehicle = Programme.Vehicle;
        await context.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO lab.vehicle (key, class_key, make, model, model_year_from, model_year_to, kerb_mass_kg, created_at)
            VALUES ({vehicle.Key}, {vehicle.Class}, {vehicle.Make}, {vehicle.Model}, {vehicle.ModelYearFrom}, {vehicle.ModelYearTo},
                    {vehicle.KerbMassKg}, {at})
            ON CONFLICT (key) DO NOTHING
            """,
            cancellation);
    }

    private async Task WriteRun(DateTimeOffset at, CancellationToken cancellation)
    {
        var run = await context.Set<TestRunRow>().FindAsync([Programme.Test], cancellation);
        if (run is null)
        {
            run = new TestRunRow { Test = Programme.Test, CreatedAt = at };
            context.Add(run);
        }

        run.VehicleKey = Programme.Vehicle.Key;
        run.Procedure = Programme.Procedure;
        run.Date = Programme.Date;
        run.Laboratory = Programme.Laboratory;
        run.RepeatOf = Programme.RepeatOf;
        run.Occupants = StoredJson.Write(Programme.Occupants);
        await context.SaveChangesAsync(cancellation);
    }

    private Failure NothingToReplace() => new(
        FailureKind.Conflict, "Nothing to replace", $"There is no package of test '{Programme.Test}', so '{options.Replaces}' cannot be replaced.");

    private async Task<Failure> Conflict(CurrentRun current, CancellationToken cancellation)
    {
        var content = await context.Set<PackageRow>()
            .Where(row => row.Sha256 == current.PackageSha256).Select(row => row.ContentSha256).SingleAsync(cancellation);
        var same = content == incoming.Package.ContentSha256;
        var detail = options.Replaces is null
            ? $"Test '{Programme.Test}' has another package. To replace it, name it in 'replaces' and give a reason."
            : $"The current package of test '{Programme.Test}' is {current.PackageSha256}, not {options.Replaces}.";
        return new Failure(FailureKind.Conflict, "Another package is stored", detail)
        {
            Members = new Dictionary<string, object?>
            {
                ["test"] = Programme.Test,
                ["sha256"] = incoming.Upload.Sha256,
                ["currentSha256"] = current.PackageSha256,
                ["sameContent"] = same,
            },
        };
    }
}

/// <summary>What stands against taking a package in.</summary>
/// <param name="Same">The current run, where its package has the same bytes; else null.</param>
/// <param name="Refusal">Why not, or null.</param>
/// <param name="Replaced">SHA-256 of the package it replaces, or null.</param>
internal sealed record IngestDecision(CurrentRun? Same, Failure? Refusal, string? Replaced = null)
{
    public static IngestDecision New { get; } = new(null, null);
}
