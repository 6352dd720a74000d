using Microsoft.EntityFrameworkCore;
using Toepan.Api.Analysis.Historic.Tables;
using Toepan.Api.Packages;
using Toepan.Api.Programme;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Analysis.Historic;

namespace Toepan.Api.Analysis.Historic;

/// <summary>
/// Historic summary results in, and out of the statistics again. Engineers, managers and administrators. They have no channels, take part in class statistics,
/// are marked as summaries wherever they stand, and are never rated.
/// </summary>
public sealed class ResultService(
    IDbContextFactory<ProgrammeDb> contexts, UploadSpool spool, HistoricLimits limits, ProgrammeRules rules, AuditTrail audit, TimeProvider time)
{
    public const int LongestReason = 2_000;
    private const int VehiclesAnEntry = 500;

    public long MaxBytes => limits.MaxBytes;

    /// <summary>Says what a file brings and, unless it is a dry run, takes it in: wholly or not at all.</summary>
    /// <param name="file">The bytes; read once, forward only.</param>
    public async Task<Outcome<ResultImport>> Import(Viewer viewer, Stream file, ResultOptions options, CancellationToken cancellation = default)
    {
        if ((Access.ToMeasure(viewer, "bring historic results") ?? Check(options)) is { } refusal)
        {
            return refusal;
        }

        await using var upload = await spool.Receive(file, limits.MaxBytes, cancellation);
        if (upload is null)
        {
            return TooLarge();
        }

        var reading = HistoricFile.Read(upload.File, limits, cancellation);
        if (reading.Refused)
        {
            return new Failure(FailureKind.Unreadable, "The results cannot be read", reading.Problems[0].Message) { Problems = reading.Problems };
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await ResultLock.Exclusive(context, cancellation);
        if (await Replaced(context, options.Replaces, cancellation) is { } missing)
        {
            return missing;
        }

        var plan = new ResultPlan(reading, await ResultIndex.Known(context, rules, reading.Runs, options.Replaces, cancellation));
        if (plan.Refusal() is { } no)
        {
            return no;
        }

        if (options.DryRun || (plan.New.Count == 0 && options.Replaces is null))
        {
            return Result(null, reading, plan, upload.Sha256, options);
        }

        var batch = Batch(viewer, upload.Sha256, plan, options);
        await new ResultStore(context).Write(batch, plan, cancellation);
        await Withdraw(context, viewer, options.Replaces, options.Reason, cancellation);
        await Note(context, viewer, batch, plan, cancellation);
        await transaction.CommitAsync(cancellation);
        return Result(batch.Id, reading, plan, upload.Sha256, options);
    }

    /// <summary>Takes a batch out of every statistic, with a reason. Its rows stay, and so do the vehicles it made known.</summary>
    public async Task<Outcome<ResultBatch>> Withdraw(Viewer viewer, long batch, string reason, CancellationToken cancellation = default)
    {
        if ((Access.ToMeasure(viewer, "withdraw historic results") ?? Texts.Check("A reason", reason, LongestReason)) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await ResultLock.Exclusive(context, cancellation);
        if (await Replaced(context, batch, cancellation) is { } missing)
        {
            return missing;
        }

        await Withdraw(context, viewer, batch, reason, cancellation);
        await context.SaveChangesAsync(cancellation);
        await audit.Append(context, viewer, new AuditNote("withdraw results", $"results/{batch}", new { counts = true }, new { counts = false, reason = reason.Trim() }), cancellation);
        await transaction.CommitAsync(cancellation);
        return (await ResultListService.Batches(context, batch, cancellation))[0];
    }

    public Failure TooLarge() => new(FailureKind.TooLarge, "Results too large", $"A file of historic results has at most {limits.MaxBytes} bytes.");

    private static Failure? Check(ResultOptions options)
    {
        if (options.Replaces is not null && string.IsNullOrWhiteSpace(options.Reason))
        {
            return Failure.BadRequest("A batch is replaced only with a reason: give 'reason' beside 'replaces'.");
        }

        return options.Reason is null ? null : Texts.Check("A reason", options.Reason, LongestReason);
    }

    // The refusal where the batch is unknown or withdrawn already.
    private static async Task<Failure?> Replaced(ProgrammeDb context, long? batch, CancellationToken cancellation)
    {
        if (batch is not { } id || await ResultIndex.Live(context).AnyAsync(row => row.Id == id, cancellation))
        {
            return null;
        }

        return await context.Set<ResultBatchRow>().AnyAsync(row => row.Id == id, cancellation)
            ? new Failure(FailureKind.Conflict, "Withdrawn already", $"Batch {id} was withdrawn before.")
            : Failure.NotFound("batch of results", FormattableString.Invariant($"{id}"));
    }

    private ResultBatchRow Batch(Viewer viewer, string sha256, ResultPlan plan, ResultOptions options) => new()
    {
        Sha256 = sha256, At = time.GetUtcNow(), By = viewer.Name, Tests = plan.New.Count, Values = plan.New.Sum(run => run.Values.Count),
        Replaces = options.Replaces, Reason = options.Reason?.Trim(),
    };

    private async Task Withdraw(ProgrammeDb context, Viewer viewer, long? batch, string? reason, CancellationToken cancellation)
    {
        if (batch is { } id)
        {
            context.Add(new ResultWithdrawalRow { BatchId = id, At = time.GetUtcNow(), By = viewer.Name, Reason = reason!.Trim() });
            await context.SaveChangesAsync(cancellation);
        }
    }

    private async Task Note(ProgrammeDb context, Viewer viewer, ResultBatchRow batch, ResultPlan plan, CancellationToken cancellation)
    {
        foreach (var vehicles in plan.Vehicles.Chunk(VehiclesAnEntry))
        {
            var added = vehicles.Select(vehicle => new { vehicle = vehicle.Key, facts = vehicle.Facts() });
            await audit.Append(context, viewer, new AuditNote("add vehicles", $"results/{batch.Id}", null, new { vehicles = added }), cancellation);
        }

        foreach (var key in plan.Classes)
        {
            await audit.Append(context, viewer, new AuditNote("add class", $"class/{key}", null, new { fromResults = batch.Id }), cancellation);
        }

        var after = new { file = batch.Sha256, tests = batch.Tests, values = batch.Values, procedures = plan.Procedures, reason = batch.Reason };
        await audit.Append(
            context, viewer,
            new AuditNote(batch.Replaces is null ? "add results" : "replace results", $"results/{batch.Id}", batch.Replaces is { } old ? new { batch = old } : null, after),
            cancellation);
    }

    private static ResultImport Result(long? batch, HistoricReading reading, ResultPlan plan, string sha256, ResultOptions options) => new(
        batch, plan.New.Count, plan.Unchanged, reading.Rows, plan.New.Sum(run => run.Values.Count), sha256, options.DryRun, plan.Problems)
    {
        CreatedClasses = plan.Classes, CreatedProcedures = plan.Procedures, CreatedVehicles = [.. plan.Vehicles.Select(vehicle => vehicle.Key)],
        Replaced = batch is null ? null : options.Replaces,
    };
}
