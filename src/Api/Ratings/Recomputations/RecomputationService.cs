using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Recomputations;

/// <summary>
/// Adopting a scheme, and the work on every run that follows. The adoption, the list of runs and the audit entry are one transaction; the work
/// itself is done by <see cref="RecomputationWorker"/> in the background.
/// </summary>
public sealed class RecomputationService(
    IDbContextFactory<ProgrammeDb> contexts, ProgrammeRules rules, AuditTrail audit, RecomputationSignal signal, TimeProvider time)
{
    /// <summary>Longest reason, characters.</summary>
    public const int LongestReason = 2_000;

    /// <summary>Makes an edition the one that rates, and has every run rated by it. Managers and administrators; signed by typing the edition's key.</summary>
    /// <param name="confirm">The key again: the signature that this edition is meant.</param>
    public async Task<Outcome<Recomputation>> Adopt(Viewer viewer, string key, string? confirm, string? reason, CancellationToken cancellation = default)
    {
        if ((Access.ToArrange(viewer, "adopt rating schemes") ?? Texts.Check("A reason", reason, LongestReason)) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await SchemeStore.Exclude(context, cancellation);
        await SchemeStore.LockEdition(context, key, cancellation);
        if (await SchemeStore.Find(context, key, cancellation) is not { } scheme)
        {
            return Failure.NotFound("scheme", key);
        }

        if (confirm?.Trim() != key)
        {
            return Failure.BadRequest($"confirm is '{confirm}'; to sign the adoption type the edition's key, {key}.");
        }

        var before = await SchemeStore.InForce(context, cancellation);
        if (before.Scheme.Sha256 == scheme.Sha256)
        {
            return new Failure(FailureKind.Conflict, "Already adopted", $"{key} rates already.");
        }

        var id = await Begin(context, viewer, scheme, before, reason!.Trim(), cancellation);
        await audit.Append(
            context, viewer,
            new AuditNote("adopt", $"scheme/{key}", new { scheme = before.Scheme.Scheme.Key, document = before.Scheme.Sha256 }, new { scheme = key, document = scheme.Sha256, reason, recomputation = id }),
            cancellation);
        await transaction.CommitAsync(cancellation);
        await SchemeStore.Refresh(context, rules, cancellation);
        signal.Ring();
        return (await RecomputationQuery.Load(context, id, cancellation))[0];
    }

    /// <summary>Every recomputation, latest first.</summary>
    public async Task<Outcome<IReadOnlyList<Recomputation>>> List(Viewer viewer, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return Outcome.List<Recomputation>(await RecomputationQuery.Load(context, null, cancellation));
    }

    /// <summary>One recomputation with the runs whose level it changed.</summary>
    public async Task<Outcome<RecomputationDetail>> Get(Viewer viewer, long id, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if ((await RecomputationQuery.Load(context, id, cancellation)).SingleOrDefault() is not { } found)
        {
            return Unknown(id);
        }

        var changed = await context.Set<RecomputationStepRow>().AsNoTracking()
            .Where(step => step.RecomputationId == id && (step.Outcome == StepOutcome.Failed || (step.After != null && step.After.Overall != step.Before!.Overall)))
            .OrderBy(step => step.Test)
            .Select(step => new RecomputedRun(
                step.Test, step.Outcome, step.Before == null ? null : step.Before.Overall, step.After == null ? null : step.After.Overall, step.Note)).ToListAsync(cancellation);
        return new RecomputationDetail(found, changed);
    }

    /// <summary>Stops the work after the runs it is at; what is done stays done.</summary>
    public Task<Outcome<Recomputation>> Stop(Viewer viewer, long id, CancellationToken cancellation = default) =>
        Turn(viewer, id, RecomputationState.Running, RecomputationEvent.Stopped, cancellation);

    /// <summary>Goes on with stopped work.</summary>
    public Task<Outcome<Recomputation>> Resume(Viewer viewer, long id, CancellationToken cancellation = default) =>
        Turn(viewer, id, RecomputationState.Stopped, RecomputationEvent.Resumed, cancellation);

    private async Task<Outcome<Recomputation>> Turn(Viewer viewer, long id, RecomputationState from, RecomputationEvent to, CancellationToken cancellation)
    {
        if (Access.ToArrange(viewer, "stop or resume recomputations") is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await SchemeStore.Exclude(context, cancellation);
        if ((await RecomputationQuery.Load(context, id, cancellation)).SingleOrDefault() is not { } found)
        {
            return Unknown(id);
        }

        if (found.State != from)
        {
            return new Failure(FailureKind.Conflict, "Not possible now", $"Recomputation {id} is {found.State.ToString().ToLowerInvariant()}, not {from.ToString().ToLowerInvariant()}.");
        }

        if (to == RecomputationEvent.Resumed && found.Kind == RecomputationKind.Scheme && (await SchemeStore.Current(context, cancellation)).Scheme.Key != found.Scheme)
        {
            return new Failure(FailureKind.Conflict, "Overtaken", $"{found.Scheme} does not rate any more: another scheme was adopted since.");
        }

        context.Add(new RecomputationEventRow { RecomputationId = id, Event = to, At = time.GetUtcNow(), By = viewer.Name });
        await context.SaveChangesAsync(cancellation);
        await audit.Append(
            context, viewer, new AuditNote(to == RecomputationEvent.Stopped ? "stop" : "resume", $"recomputation/{id}", new { done = found.Done }, new { state = to.ToString() }), cancellation);
        await transaction.CommitAsync(cancellation);
        signal.Ring();
        return (await RecomputationQuery.Load(context, id, cancellation))[0];
    }

    // A run whose rating another scheme is still at work on is left to the new one.
    private async Task<long> Begin(ProgrammeDb context, Viewer viewer, StoredScheme scheme, InForce before, string reason, CancellationToken cancellation)
    {
        var (at, key) = (time.GetUtcNow(), scheme.Scheme.Key);
        context.Add(new SchemeAdoptionRow { Key = key, Sha256 = scheme.Sha256, Reason = reason, At = at, By = viewer.Name });
        foreach (var open in (await RecomputationQuery.Load(context, null, cancellation)).Where(one => one is { Kind: RecomputationKind.Scheme, State: RecomputationState.Running }))
        {
            context.Add(new RecomputationEventRow { RecomputationId = open.Id, Event = RecomputationEvent.Stopped, At = at, By = viewer.Name });
        }

        var row = new RecomputationRow
        {
            Kind = RecomputationKind.Scheme, Scheme = key, SchemeSha256 = scheme.Sha256, MethodEdition = before.MethodEdition, Reason = reason, At = at, By = viewer.Name,
        };
        context.Add(row);
        await context.SaveChangesAsync(cancellation);
        await RecomputationItems.Add(context, row.Id, scheme.Scheme.Procedure, cancellation);
        return row.Id;
    }

    private static Failure Unknown(long id) => Failure.NotFound("recomputation", id.ToString(System.Globalization.CultureInfo.InvariantCulture));
}
