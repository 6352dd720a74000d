using Microsoft.EntityFrameworkCore;
using Toepan.Api.Channels;
using Toepan.Api.Packages;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Api.Measures;

/// <summary>
/// What film and inspection showed: read by every role, changed by engineers, managers and administrators beside the package, which stays as it was. Every
/// change reduces and rates the run again in the transaction that keeps it.
/// </summary>
public sealed class FindingService(IDbContextFactory<ProgrammeDb> contexts, ProgrammeRules rules, AuditTrail audit, TimeProvider time)
{
    private const string Act = "change findings";

    /// <summary>The findings of a run with what was done to each.</summary>
    /// <param name="all">Those that do not count too: withdrawn ones, and changes the current package has overtaken.</param>
    public async Task<Outcome<IReadOnlyList<KeptFinding>>> List(Viewer viewer, string test, bool all = false, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await CurrentRun.Find(context, test, cancellation) is not { } current)
        {
            return Failure.NotFound("test", test);
        }

        var kept = await RunFindings.All(context, test, current.PackageSha256, cancellation);
        return Outcome.List<KeptFinding>([.. kept.Where(finding => all || finding.Standing)]);
    }

    /// <summary>Adds a finding. Refused where the run has the very same already.</summary>
    /// <param name="reason">Why, or null.</param>
    public Task<Outcome<FindingResult>> Add(Viewer viewer, string test, FindingDraft draft, string? reason, CancellationToken cancellation = default) =>
        Change(viewer, test, new(draft, string.IsNullOrWhiteSpace(reason) ? null : reason, Needed: false), state =>
        {
            var number = state.Kept.Count(finding => finding.Changes is [{ Act: FindingAct.Added }, ..]) + 1;
            return Twice(state, draft, null) is { } refusal ? refusal : state.Next(FindingId.OfAddition(number), 1, FindingAct.Added, draft.ToFinding());
        }, cancellation);

    /// <summary>Corrects a finding that is still at the version its editor saw.</summary>
    public Task<Outcome<FindingResult>> Correct(
        Viewer viewer, string test, FindingEdit edit, FindingDraft draft, string? reason, CancellationToken cancellation = default) =>
        Change(viewer, test, new(draft, reason, Needed: true), state =>
            (state.Find(edit, out var kept) ?? Twice(state, draft, edit.Id)) is { } refusal ? refusal
                : FindingLedger.Content(kept!.Finding) == draft.ToFinding() ? Failure.BadRequest("Nothing is changed: the finding says this already.")
                : state.Next(edit.Id, kept.Version + 1, FindingAct.Corrected, draft.ToFinding()), cancellation);

    /// <summary>Withdraws a finding that is still at the version its editor saw. It is kept, and no longer counts.</summary>
    public Task<Outcome<FindingResult>> Withdraw(Viewer viewer, string test, FindingEdit edit, string? reason, CancellationToken cancellation = default) =>
        Change(viewer, test, new(null, reason, Needed: true), state => state.Find(edit, out var kept) is { } refusal
            ? refusal
            : state.Next(edit.Id, kept!.Version + 1, FindingAct.Withdrawn, FindingLedger.Content(kept.Finding)), cancellation);

    // Under the lock of the run: judge the change by what stands, keep it, reduce and rate again.
    private async Task<Outcome<FindingResult>> Change(
        Viewer viewer, string test, FindingAsk ask, Func<FindingState, Outcome<FindingChange>> decide, CancellationToken cancellation)
    {
        if ((Access.ToMeasure(viewer, Act) ?? ask.CheckReason()) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await RunLock.Begin(context, test, cancellation);
        if (await CurrentRun.Find(context, test, cancellation) is not { } current)
        {
            return Failure.NotFound("test", test);
        }

        var occupants = StoredJson.Read<Occupant[]>(
            await context.Set<TestRunRow>().Where(run => run.Test == test).Select(run => run.Occupants).SingleAsync(cancellation));
        if (ask.Draft?.Check(occupants) is { } fault)
        {
            return fault;
        }

        var kept = await RunFindings.All(context, test, current.PackageSha256, cancellation);
        var decided = decide(new(test, kept, ask.Reason?.Trim(), viewer.Name, time.GetUtcNow()));
        if (decided.Value is not { } change)
        {
            return decided.Failure!;
        }

        context.Add(FindingChangeRow.From(test, change));
        await context.SaveChangesAsync(cancellation);
        await RunAgain.Write(context, rules, current, FindingSentence.Cause(change), cancellation);
        await audit.Append(context, viewer, FindingSentence.Note(test, change, kept), cancellation);
        await transaction.CommitAsync(cancellation);
        return await Result(context, test, change.Id, cancellation);
    }

    private static async Task<FindingResult> Result(ProgrammeDb context, string test, string id, CancellationToken cancellation)
    {
        var now = (await CurrentRun.Find(context, test, cancellation))!;
        var kept = await RunFindings.All(context, test, now.PackageSha256, cancellation);
        return new(kept.Single(finding => finding.Id == id), (await MeasureService.ReadReductions(context, now, cancellation))[0]);
    }

    private static Failure? Twice(FindingState state, FindingDraft draft, string? but) =>
        state.Kept.FirstOrDefault(kept => kept.Standing && kept.Id != but && FindingLedger.Content(kept.Finding) == draft.ToFinding()) is { } same
            ? new Failure(FailureKind.Conflict, "Said already", $"Finding {same.Id} of test '{state.Test}' says the very same already.")
            : null;
}
