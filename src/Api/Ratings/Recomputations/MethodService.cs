using Microsoft.EntityFrameworkCore;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Measures;

namespace Toepan.Api.Ratings.Recomputations;

/// <summary>
/// Method editions: a candidate is computed from kept packages in the background, compared, and promoted by a reviewer; until then the current
/// edition stays. Every role reads.
/// </summary>
public sealed class MethodService(
    IDbContextFactory<ProgrammeDb> contexts, ProgrammeRules rules, IReleasedRuns released, AuditTrail audit, RecomputationSignal signal, TimeProvider time)
{
    /// <summary>Every edition this program can compute.</summary>
    public async Task<Outcome<IReadOnlyList<MethodSummary>>> List(Viewer viewer, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return Outcome.List<MethodSummary>(await Summaries(context, cancellation));
    }

    /// <summary>Starts computing every run by a candidate edition. Managers, reviewers and administrators.</summary>
    public async Task<Outcome<Recomputation>> Start(Viewer viewer, string edition, string? reason, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Manager, Role.Reviewer, Role.Administrator))
        {
            return Failure.Forbidden("recompute runs by another method edition");
        }

        if (Texts.Check("A reason", reason, RecomputationService.LongestReason) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await SchemeStore.Exclude(context, cancellation);
        if ((await Summaries(context, cancellation)).Find(one => one.Edition == edition) is not { } found)
        {
            return Failure.NotFound("method edition", edition);
        }

        if (found.Current || found.Recomputation is { State: not RecomputationState.Finished })
        {
            return new Failure(
                FailureKind.Conflict, "Not possible now", found.Current ? $"Edition {edition} is the current one." : $"Edition {edition} is being computed already.");
        }

        var scheme = await SchemeStore.Current(context, cancellation);
        var row = new RecomputationRow
        {
            Kind = RecomputationKind.Methods, Scheme = scheme.Scheme.Key, SchemeSha256 = scheme.Sha256, MethodEdition = edition, Reason = reason!.Trim(),
            At = time.GetUtcNow(), By = viewer.Name,
        };
        context.Add(row);
        await context.SaveChangesAsync(cancellation);
        await RecomputationItems.Add(context, row.Id, scheme.Scheme.Procedure, cancellation);
        await audit.Append(context, viewer, new AuditNote("recompute", $"methods/{edition}", null, new { recomputation = row.Id, reason }), cancellation);
        await transaction.CommitAsync(cancellation);
        signal.Ring();
        return (await RecomputationQuery.Load(context, row.Id, cancellation))[0];
    }

    /// <summary>What the latest recomputation by an edition moves.</summary>
    public async Task<Outcome<MethodComparison>> Compare(Viewer viewer, string edition, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return (await Summaries(context, cancellation)).Find(one => one.Edition == edition) is not { Recomputation: { } work } found
            ? Failure.NotFound("comparison of method edition", edition)
            : new MethodComparison(
                found, work, await Outdated(context, work.Id, cancellation), await Moved(context, work.Id, cancellation), await Levels(context, work.Id, cancellation));
    }

    /// <summary>Makes a candidate the current edition, for new uploads and for every run it was computed for, released ones excepted. Reviewers.</summary>
    /// <param name="confirm">The edition's word again: the signature that this one is meant.</param>
    public async Task<Outcome<MethodSummary>> Promote(Viewer viewer, string edition, string? confirm, string? reason, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Reviewer))
        {
            return Failure.Forbidden("promote method editions: that is a reviewer's act");
        }

        if (Texts.Check("A reason", reason, RecomputationService.LongestReason) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await SchemeStore.Exclude(context, cancellation);
        if ((await Summaries(context, cancellation)).Find(one => one.Edition == edition) is not { } found)
        {
            return Failure.NotFound("method edition", edition);
        }

        if (await Against(context, found, confirm, cancellation) is { } against)
        {
            return against;
        }

        await Point(context, found.Recomputation!.Id, cancellation);
        context.Add(new MethodPromotionRow { Edition = edition, RecomputationId = found.Recomputation.Id, Reason = reason!.Trim(), At = time.GetUtcNow(), By = viewer.Name });
        await context.SaveChangesAsync(cancellation);
        await audit.Append(context, viewer, new AuditNote("promote", $"methods/{edition}", null, new { recomputation = found.Recomputation.Id, reason }), cancellation);
        await transaction.CommitAsync(cancellation);
        return found with { Current = true };
    }

    private static async Task<Failure?> Against(ProgrammeDb context, MethodSummary found, string? confirm, CancellationToken cancellation)
    {
        if (found.Current || found.Recomputation is not { State: RecomputationState.Finished } work)
        {
            return new Failure(
                FailureKind.Conflict, "Not possible now",
                found.Current ? $"Edition {found.Edition} is the current one." : $"Edition {found.Edition} has not been computed for every run yet.");
        }

        if (confirm?.Trim() != found.Edition)
        {
            return Failure.BadRequest($"confirm is '{confirm}'; to sign the promotion type the edition, {found.Edition}.");
        }

        var outdated = await Outdated(context, work.Id, cancellation);
        return outdated.Count == 0
            ? null
            : new Failure(
                FailureKind.Conflict, "Runs changed since", $"{string.Join(", ", outdated.Take(5))} changed after they were computed by edition {found.Edition}: compute it again.");
    }

    /// <summary>Moves the pointers of the runs computed, unless they are released.</summary>
    private async Task Point(ProgrammeDb context, long id, CancellationToken cancellation)
    {
        var steps = await context.Set<RecomputationStepRow>().AsNoTracking().Where(step => step.RecomputationId == id && step.AfterId != null)
            .OrderBy(step => step.Test).Select(step => new { step.Test, step.AfterId }).ToListAsync(cancellation);
        var kept = await released.Among(context, [.. steps.Select(step => step.Test)], cancellation);
        var at = time.GetUtcNow();
        context.AddRange(steps.Where(step => !kept.Contains(step.Test)).Select(step => new CurrentRatingRow { Test = step.Test, RatingId = step.AfterId!.Value, At = at }));
    }

    private async Task<List<MethodSummary>> Summaries(ProgrammeDb context, CancellationToken cancellation)
    {
        var current = (await SchemeStore.InForce(context, cancellation)).MethodEdition;
        var works = (await RecomputationQuery.Load(context, null, cancellation)).Where(one => one.Kind == RecomputationKind.Methods).ToList();
        return [.. rules.Methods.Select(methods => new MethodSummary(
            methods.Edition, methods.Title, methods.Changes, methods.Edition == current, works.Find(work => work.MethodEdition == methods.Edition)))];
    }

    /// <summary>Runs whose current rating is not the one compared with, runs that came since, and runs rated by another scheme than now.</summary>
    private static async Task<List<string>> Outdated(ProgrammeDb context, long id, CancellationToken cancellation) =>
        await context.Database.SqlQuery<string>(
            $"""
            SELECT c.test AS "Value"
            FROM (SELECT DISTINCT ON (test) test, rating_id FROM lab.current_rating ORDER BY test, id DESC) c
            JOIN lab.test_run run ON run.test = c.test
            LEFT JOIN lab.recomputation_step s ON s.recomputation_id = {id} AND s.test = c.test
            WHERE (s.test IS NULL OR (s.before_id <> c.rating_id AND s.after_id IS DISTINCT FROM c.rating_id))
            ORDER BY 1
            """).ToListAsync(cancellation);

    private static async Task<List<MovedLevel>> Levels(ProgrammeDb context, long id, CancellationToken cancellation) =>
        await context.Set<RecomputationStepRow>().AsNoTracking()
            .Where(step => step.RecomputationId == id && step.After != null && step.After.Overall != step.Before!.Overall).OrderBy(step => step.Test)
            .Select(step => new MovedLevel(step.Test, step.Before!.Overall, step.After!.Overall)).ToListAsync(cancellation);

    private static async Task<List<MovedMeasure>> Moved(ProgrammeDb context, long id, CancellationToken cancellation)
    {
        var rows = await context.Set<RecomputationStepRow>().Where(step => step.RecomputationId == id && step.After != null)
            .SelectMany(
                step => context.Set<MeasureRow>().Where(row => row.ReductionId == step.Before!.ReductionId),
                (step, before) => new { step.Test, step.After!.ReductionId, Before = before })
            .Select(pair => new
            {
                pair.Test, pair.Before.Code, pair.Before.Unit, pair.Before.Value,
                After = context.Set<MeasureRow>().Where(row => row.ReductionId == pair.ReductionId && row.Code == pair.Before.Code && row.Position == pair.Before.Position)
                    .Select(row => row.Value).FirstOrDefault(),
            }).ToListAsync(cancellation);
        var moved =
            from row in rows
            where row.Value is not null || row.After is not null
            group row by row.Code into code
            let differing = code.Where(row => row.Value != row.After).ToList()
            let largest = differing.Where(row => row.Value is not null && row.After is not null).MaxBy(row => Math.Abs(row.After!.Value - row.Value!.Value))
            select new MovedMeasure(
                code.Key, code.First().Unit, code.Count(), differing.Count, largest is null ? null : Digits.Round12(largest.After!.Value - largest.Value!.Value), largest?.Test,
                largest is { Value: not 0 } ? Digits.Round12((largest.After!.Value - largest.Value!.Value) / Math.Abs(largest.Value.Value)) : null);
        return [.. moved.OrderByDescending(measure => measure.Moved > 0).ThenBy(measure => MeasureCatalogue.OrderOf(measure.Code))];
    }
}
