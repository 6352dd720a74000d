using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Toepan.Api.Programme;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Recomputations;

/// <summary>
/// Does what recomputations have left, a few runs a transaction, on one node at a time. It keeps nothing of its own: after a kill the next
/// start finds the runs without a step and goes on. docs/decisions/0100.
/// </summary>
internal sealed partial class RecomputationWorker(
    IDbContextFactory<ProgrammeDb> contexts, ProgrammeRules rules, RecomputationSignal signal, RecomputationSteps steps, AuditTrail audit, TimeProvider time,
    ILogger<RecomputationWorker> log) : BackgroundService
{
    private const long NodeLock = 0x746F6570616E52;
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(3);

    /// <summary>Before anything listens: the carried schemes are in the store.</summary>
    public override async Task StartAsync(CancellationToken cancellationToken)
    {
        await using (var context = await contexts.CreateDbContextAsync(cancellationToken))
        {
            await SchemeStore.Prepare(context, rules, time.GetUtcNow(), cancellationToken);
        }

        await base.StartAsync(cancellationToken);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await Work(stoppingToken);
                await signal.Wait(Look, stoppingToken);
            }
            catch (Exception) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception broken) when (!stoppingToken.IsCancellationRequested)
            {
                // The store may be away for a while; the work waits in it.
                Interrupted(broken);
                await Task.Delay(Look, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private async Task Work(CancellationToken cancellation)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await SchemeStore.Refresh(context, rules, cancellation);
        if ((await RecomputationQuery.Load(context, null, cancellation)).LastOrDefault(one => one.State == RecomputationState.Running) is not { } open)
        {
            return;
        }

        await context.Database.OpenConnectionAsync(cancellation);
        if (!await context.Database.SqlQuery<bool>($"SELECT pg_try_advisory_lock({NodeLock}) AS \"Value\"").SingleAsync(cancellation))
        {
            return;
        }

        try
        {
            while (await steps.Next(open, cancellation))
            {
            }

            await Finish(open, cancellation);
        }
        finally
        {
            await context.Database.ExecuteSqlAsync($"SELECT pg_advisory_unlock({NodeLock})", CancellationToken.None);
        }

        signal.Ring();
    }

    private async Task Finish(Recomputation open, CancellationToken cancellation)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await SchemeStore.Exclude(context, cancellation);
        if (await RecomputationQuery.StateOf(context, open.Id, cancellation) != RecomputationState.Running)
        {
            return;
        }

        context.Add(new RecomputationEventRow { RecomputationId = open.Id, Event = RecomputationEvent.Finished, At = time.GetUtcNow(), By = Viewer.Service.Name });
        await context.SaveChangesAsync(cancellation);
        await audit.Append(context, Viewer.Service, new AuditNote("finish", $"recomputation/{open.Id}", null, new { runs = open.Runs }), cancellation);
        await transaction.CommitAsync(cancellation);
    }

    [LoggerMessage(LogLevel.Error, "A recomputation was interrupted; it goes on by itself.")]
    private partial void Interrupted(Exception broken);
}
