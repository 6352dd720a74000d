using Microsoft.EntityFrameworkCore;
using Toepan.Api.Channels.Tables;
using Toepan.Api.Measures;
using Toepan.Api.Packages;
using Toepan.Api.Programme;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Channels;

/// <summary>
/// What engineers decided about channels. Each decision makes a new reduction and rating; earlier ones stay. A flag belongs to the package
/// it was put on: a replacement starts without flags.
/// </summary>
public sealed class ChannelFlagService(IDbContextFactory<ProgrammeDb> contexts, ProgrammeRules rules, AuditTrail audit, TimeProvider time)
{
    private const string Act = "decide about channels";

    /// <summary>Every flag ever put on the run, withdrawn ones too, latest first.</summary>
    public async Task<Outcome<IReadOnlyList<FlagRecord>>> List(Viewer viewer, string test, CancellationToken cancellation = default)
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

        var rows = await context.Set<ChannelFlagRow>().AsNoTracking().Include(row => row.Withdrawal)
            .Where(row => row.Test == test).OrderByDescending(row => row.Id).ToListAsync(cancellation);
        return Outcome.List<FlagRecord>(rows.ConvertAll(row => row.ToRecord()));
    }

    /// <summary>Puts a flag on a channel and reduces the run again. Engineers, managers and administrators.</summary>
    public Task<Outcome<FlagResult>> Add(Viewer viewer, string test, NewFlag flag, CancellationToken cancellation = default) =>
        Change(viewer, test, FlagLimits.Check(flag), async (context, current, cause) =>
        {
            var code = flag.Channel.ToUpperInvariant();
            if (!await context.Set<ChannelRow>().AnyAsync(row => row.PackageSha256 == current.PackageSha256 && row.Code == code, cancellation))
            {
                return new FlagChange(null, Failure.BadRequest($"Test '{test}' has no channel '{flag.Channel}'."));
            }

            var row = new ChannelFlagRow
            {
                PackageSha256 = current.PackageSha256, Test = test, Channel = code, Kind = flag.Kind, FromS = flag.FromS,
                Factor = FlagLimits.Factor(flag), Reason = flag.Reason.Trim(), By = cause.By, At = cause.At,
            };
            context.Add(row);
            return new FlagChange(row, null);
        }, FlagLimits.Sentence(flag), flag.Reason, cancellation);

    /// <summary>Withdraws a flag with a reason and reduces the run again.</summary>
    public Task<Outcome<FlagResult>> Withdraw(Viewer viewer, string test, long flag, string reason, CancellationToken cancellation = default) =>
        Change(viewer, test, FlagLimits.CheckReason(reason), async (context, current, cause) =>
        {
            var row = await context.Set<ChannelFlagRow>().Include(found => found.Withdrawal)
                .SingleOrDefaultAsync(found => found.Id == flag && found.Test == test, cancellation);
            if (row is null)
            {
                return new FlagChange(null, Failure.NotFound($"flag of test '{test}'", $"{flag}"));
            }

            if (row.Withdrawal is not null || row.PackageSha256 != current.PackageSha256)
            {
                return new FlagChange(null, new Failure(FailureKind.Conflict, "Flag does not stand", $"Flag {flag} of test '{test}' does not stand any more."));
            }

            row.Withdrawal = new ChannelFlagWithdrawalRow { FlagId = flag, Reason = reason.Trim(), By = cause.By, At = cause.At };
            return new FlagChange(row, null);
        }, $"Withdrew flag {flag}", reason, cancellation);

    // Under the lock of the run: change the flags, reduce the stored package under those that stand, store what comes of it.
    private async Task<Outcome<FlagResult>> Change(
        Viewer viewer, string test, Failure? invalid, Func<ProgrammeDb, CurrentRun, RunCause, Task<FlagChange>> change, string what, string why,
        CancellationToken cancellation)
    {
        if ((Access.ToMeasure(viewer, Act) ?? invalid) is { } refusal)
        {
            return refusal;
        }

        var cause = new RunCause(viewer.Name, time.GetUtcNow(), what, why.Trim());
        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await RunLock.Begin(context, test, cancellation);
        if (await CurrentRun.Find(context, test, cancellation) is not { } current)
        {
            return Failure.NotFound("test", test);
        }

        var changed = await change(context, current, cause);
        if (changed.Refusal is { } no)
        {
            return no;
        }

        await context.SaveChangesAsync(cancellation);
        await RunAgain.Write(context, rules, current, cause, cancellation);
        var note = new AuditNote("flag", $"test/{test}", null, new { change = cause.What, reason = cause.Why, package = current.PackageSha256 });
        await audit.Append(context, viewer, note, cancellation);
        await transaction.CommitAsync(cancellation);
        var now = (await CurrentRun.Find(context, test, cancellation))!;
        return new FlagResult(changed.Row!.ToRecord(), (await MeasureService.ReadReductions(context, now, cancellation))[0]);
    }

    private sealed record FlagChange(ChannelFlagRow? Row, Failure? Refusal);
}
