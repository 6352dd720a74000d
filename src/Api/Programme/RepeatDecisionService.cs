using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>Decisions about repeating a run: recorded before they are acted on, never taken back, the latest counts.</summary>
public sealed class RepeatDecisionService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    public const int LongestText = 4_000;

    /// <summary>Every decision about a run, latest first.</summary>
    public async Task<Outcome<IReadOnlyList<RepeatDecision>>> List(Viewer viewer, string test, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await CurrentRun.Find(context, test, cancellation) is null)
        {
            return Failure.NotFound("test", test);
        }

        var rows = await context.Set<RepeatDecisionRow>().AsNoTracking().Where(row => row.Test == test).OrderByDescending(row => row.Id).ToListAsync(cancellation);
        return Outcome.List<RepeatDecision>(rows.ConvertAll(RepeatDecision.Of));
    }

    /// <summary>
    /// Records a decision, and with it who had opened the run's measures by then. Managers and administrators. Refused where the run bears it
    /// not (<see cref="RepeatRules"/>).
    /// </summary>
    public async Task<Outcome<RepeatDecision>> Decide(Viewer viewer, string test, NewRepeatDecision decision, CancellationToken cancellation = default)
    {
        var refusal = Access.ToArrange(viewer, "decide on repeats") ?? Texts.Check("The evidence", decision.Evidence, LongestText)
            ?? Texts.Check("The list of options considered", decision.Options, LongestText);
        if (refusal is not null)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await RunLock.Begin(context, test, cancellation);
        var runs = await RunIndex.Load(context, context.Set<TestRunRow>().Where(run => run.Test == test), cancellation);
        if (runs is not [var run])
        {
            return Failure.NotFound("test", test);
        }

        var situation = new RepeatSituation(run.Valid, await RepeatIndex.RepeatedBy(context, test, cancellation));
        if (RepeatRules.Refusal(decision.Trigger, decision.Choice, situation) is { } reason)
        {
            return new Failure(FailureKind.Conflict, "Decision refused", reason);
        }

        var row = await Write(context, viewer, run, decision, cancellation);
        await transaction.CommitAsync(cancellation);
        return RepeatDecision.Of(row);
    }

    private async Task<RepeatDecisionRow> Write(
        ProgrammeDb context, Viewer viewer, TestRunSummary run, NewRepeatDecision decision, CancellationToken cancellation)
    {
        var seen = await context.Set<MeasureViewRow>().AsNoTracking().Where(view => view.Test == run.Test)
            .OrderBy(view => view.FirstAt).ThenBy(view => view.Who).Select(view => new SeenBy(view.Who, view.FirstAt)).ToListAsync(cancellation);
        var row = new RepeatDecisionRow
        {
            Test = run.Test, Trigger = decision.Trigger, Choice = decision.Choice, Evidence = decision.Evidence.Trim(), Options = decision.Options.Trim(),
            Valid = run.Valid, SaidSeen = decision.MeasuresSeen, SeenBy = StoredJson.Write(seen), DecidedBy = viewer.Name, DecidedAt = time.GetUtcNow(),
        };
        context.Add(row);
        await context.SaveChangesAsync(cancellation);
        await audit.Append(context, viewer, new AuditNote("decide repeat", $"test/{run.Test}", null, RepeatDecision.Of(row)), cancellation);
        return row;
    }
}
