using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Recomputations;

/// <summary>The next few runs of a recomputation, wholly or not at all: new ratings, pointers, steps and the audit entry in one transaction under the runs' locks.</summary>
internal sealed class RecomputationSteps(
    IDbContextFactory<ProgrammeDb> contexts, SchemeRun schemeRun, MethodRun methodRun, AuditTrail audit)
{
    private const int RatingsAtOnce = 50;

    /// <summary>Reducing a package takes a second: one a transaction.</summary>
    private const int ReductionsAtOnce = 1;

    /// <summary>False when nothing is left or it was stopped.</summary>
    public async Task<bool> Next(Recomputation work, CancellationToken cancellation)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await RecomputationQuery.StateOf(context, work.Id, cancellation) != RecomputationState.Running)
        {
            return false;
        }

        var tests = await RecomputationItems.Next(context, work.Id, work.Kind == RecomputationKind.Scheme ? RatingsAtOnce : ReductionsAtOnce, cancellation);
        if (tests.Count == 0)
        {
            return false;
        }

        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        foreach (var test in tests)
        {
            await RunLock.Take(context, test, cancellation);
        }

        // Another node, or this one before a lost answer, may have done them while the locks were waited for.
        var left = (await RecomputationItems.Next(context, work.Id, tests.Count, cancellation)).Intersect(tests).ToList();
        var done = work.Kind == RecomputationKind.Scheme
            ? await schemeRun.Do(context, work, left, cancellation)
            : await methodRun.Do(context, work, left, cancellation);
        context.AddRange(done);
        await context.SaveChangesAsync(cancellation);
        await audit.Append(
            context, Viewer.Service,
            new AuditNote(
                work.Kind == RecomputationKind.Scheme ? "re-rate" : "recompute", $"recomputation/{work.Id}", null,
                new { by = work.By, runs = done.Select(step => new { test = step.Test, outcome = step.Outcome.ToString(), before = step.BeforeId, after = step.AfterId }) }),
            cancellation);
        await transaction.CommitAsync(cancellation);
        return true;
    }
}
