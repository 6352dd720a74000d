using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages;
using Toepan.Api.Store;

namespace Toepan.Api.Analysis.Historic;

/// <summary>A code under which a historic result counts is not free for a run.</summary>
internal sealed class SummaryCodeGuard : ITestCodeGuard
{
    public async Task<Failure?> Check(ProgrammeDb context, string test, CancellationToken cancellation)
    {
        await ResultLock.Shared(context, cancellation);
        var batches = await ResultIndex.LiveRuns(context).Where(run => run.Test == test).Select(run => run.BatchId).ToListAsync(cancellation);
        return batches is [var batch, ..]
            ? new Failure(
                FailureKind.Conflict, "A historic result has this code",
                FormattableString.Invariant($"Test '{test}' is a summary result of batch {batch}. Withdraw or replace that batch first; then its package can be taken."))
            {
                Members = new Dictionary<string, object?> { ["test"] = test, ["batch"] = batch },
            }
            : null;
    }
}
