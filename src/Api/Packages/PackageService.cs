using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages;

/// <summary>Packages in.</summary>
public sealed class PackageService(
    IDbContextFactory<ProgrammeDb> contexts, UploadSpool spool, PackageLimits limits, ProgrammeRules rules, AuditTrail audit,
    TimeProvider time, ITestCodeGuard codes)
{
    /// <summary>Longest reason kept, characters.</summary>
    public const int LongestReason = 2_000;

    /// <summary>Reads, computes and stores one package: wholly or not at all. Engineers, managers and administrators.</summary>
    /// <param name="zip">The archive; read once, forward only.</param>
    public async Task<Outcome<UploadResult>> Upload(
        Viewer viewer, Stream zip, UploadOptions options, CancellationToken cancellation = default)
    {
        if ((Access.ToMeasure(viewer, "upload packages") ?? Check(options)) is { } refusal)
        {
            return refusal;
        }

        await using var upload = await spool.Receive(zip, cancellation);
        if (upload is null)
        {
            return TooLarge();
        }

        var reading = PackageReader.Read(upload.File, await Known(cancellation), limits, cancellation);
        if (reading.Package is null)
        {
            return Unreadable(reading);
        }

        var incoming = new IncomingPackage(upload, reading.Package, await WithProgramme(reading, cancellation));
        return await TakeIn(viewer, incoming, options, cancellation);
    }

    /// <summary>Most bytes a package may have.</summary>
    public long MaxBytes => limits.MaxBytes;

    /// <summary>What to say of a body longer than the limit.</summary>
    public Failure TooLarge() => new(
        FailureKind.TooLarge, "Package too large", $"A package has at most {limits.MaxBytes} bytes.");

    private async Task<Outcome<UploadResult>> TakeIn(
        Viewer viewer, IncomingPackage incoming, UploadOptions options, CancellationToken cancellation)
    {
        var test = incoming.Package.Programme.Test;
        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var inForce = await SchemeStore.InForce(context, cancellation);
        var run = RunComputer.Compute(rules, inForce, incoming.Package, []);
        await using var transaction = await RunLock.Begin(context, test, cancellation);
        if (await codes.Check(context, test, cancellation) is { } taken)
        {
            return taken;
        }

        var ingest = new PackageIngest(context, spool, incoming, options);
        var decision = await ingest.Decide(cancellation);
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        if (decision.Same is { } same)
        {
            return await StoredResult(context, same, options, cancellation);
        }

        // What people changed of the run's findings holds over its new package too.
        var changed = await RunFindings.Over(context, test, incoming.Package, cancellation);
        var now = await SchemeStore.InForceForWriting(context, cancellation);
        run = ReferenceEquals(changed, incoming.Package) && now == inForce ? run : RunComputer.Compute(rules, now, changed, []);

        if (!options.DryRun)
        {
            await ingest.Store(run, Cause(viewer, decision, options), cancellation);
            await audit.Append(context, viewer, Note(incoming, decision, options), cancellation);
            await transaction.CommitAsync(cancellation);
        }

        return new UploadResult(
            test, true, incoming.Upload.Sha256, run.Reduction.Conduct.Valid, run.AllProblems(incoming.Problems), run.Rating.Overall,
            run.Rating.NotRated, options.DryRun);
    }

    private RunCause Cause(Viewer viewer, IngestDecision decision, UploadOptions options) => new(
        viewer.Name, time.GetUtcNow(),
        decision.Replaced is null ? "Uploaded the package" : $"{RunCause.Replaced}{decision.Replaced[..12]}", options.Reason);

    private static AuditNote Note(IncomingPackage incoming, IngestDecision decision, UploadOptions options) => new(
        decision.Replaced is null ? "upload" : "replace", $"test/{incoming.Package.Programme.Test}",
        decision.Replaced is null ? null : new { package = decision.Replaced },
        new { package = incoming.Upload.Sha256, reason = options.Reason });

    private static async Task<UploadResult> StoredResult(
        ProgrammeDb context, CurrentRun current, UploadOptions options, CancellationToken cancellation)
    {
        var reduction = await CurrentRun.ReadReduction(context, current.ReductionId, cancellation);
        var rating = await context.Set<Ratings.Tables.RatingRow>().AsNoTracking().SingleAsync(row => row.Id == current.RatingId, cancellation);
        var problems = await context.Set<PackageRow>()
            .Where(row => row.Sha256 == current.PackageSha256).Select(row => row.Problems).SingleAsync(cancellation);
        return new UploadResult(
            current.Test, false, current.PackageSha256, reduction.Conduct.Valid, [.. StoredJson.Read<Problem[]>(problems), .. reduction.Problems],
            rating.Overall, rating.NotRated, options.DryRun);
    }

    private static Failure? Check(UploadOptions options)
    {
        if (options.Replaces is not null && string.IsNullOrWhiteSpace(options.Reason))
        {
            return Failure.BadRequest("A package is replaced only with a reason: give 'reason' beside 'replaces'.");
        }

        return options.Reason is null ? null : Texts.Check("A reason", options.Reason, LongestReason);
    }

    private static Failure Unreadable(PackageReading reading) => new(
        FailureKind.Unreadable, "The package cannot be read",
        reading.Problems.FirstOrDefault(problem => problem.Severity == ProblemSeverity.Error)?.Message ?? "The package cannot be read.")
    {
        Problems = reading.Problems,
    };

    private async Task<KnownProgramme> Known(CancellationToken cancellation)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var classes = await context.Set<VehicleClassRow>().Select(row => row.Key).ToListAsync(cancellation);
        return new KnownProgramme(rules.Procedures.Keys.ToHashSet(), classes.ToHashSet());
    }

    // What only the programme can say of a package: a repeat of a run we do not know (its package may still come), a vehicle known otherwise.
    private async Task<IReadOnlyList<Problem>> WithProgramme(PackageReading reading, CancellationToken cancellation)
    {
        var programme = reading.Package!.Programme;
        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var problems = reading.Problems.ToList();
        if (programme.RepeatOf is { } repeated && !await context.Set<TestRunRow>().AnyAsync(run => run.Test == repeated, cancellation))
        {
            problems.Add(Warning("programme.repeat-of-unknown", $"repeatOf names '{repeated}', which is not in the programme.", repeated));
        }

        var vehicle = await context.Set<VehicleRow>().AsNoTracking().SingleOrDefaultAsync(row => row.Key == programme.Vehicle.Key, cancellation);
        if (vehicle is not null && vehicle.ClassKey != programme.Vehicle.Class)
        {
            problems.Add(Warning(
                "programme.vehicle-class-differs",
                $"vehicle.class is '{programme.Vehicle.Class}', but the programme has '{vehicle.Key}' in class '{vehicle.ClassKey}', which stays.",
                programme.Vehicle.Class));
        }

        return problems;
    }

    private static Problem Warning(string code, string message, string value) =>
        new(ProblemSeverity.Warning, code, message, "programme.json", Value: value);
}
