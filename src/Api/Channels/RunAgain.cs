using Microsoft.EntityFrameworkCore;
using Toepan.Api.Channels.Tables;
using Toepan.Api.Packages;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Ratings;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Channels;

/// <summary>
/// Reduces and rates the stored package of a run again, under the channel flags that stand and with the findings that count, and makes the result current.
/// What was signed of an earlier rating is then signed of an earlier rating.
/// </summary>
internal static class RunAgain
{
    /// <summary>The context is in a transaction that holds the run's lock; what changed is saved.</summary>
    public static async Task Write(ProgrammeDb context, ProgrammeRules rules, CurrentRun current, RunCause cause, CancellationToken cancellation)
    {
        var standing = await context.Set<ChannelFlagRow>().AsNoTracking()
            .Where(row => row.PackageSha256 == current.PackageSha256 && row.Withdrawal == null).OrderBy(row => row.Id).ToListAsync(cancellation);
        var package = await RunFindings.Package(context, current.Test, current.PackageSha256, cancellation);
        var problems = await context.Set<PackageRow>()
            .Where(row => row.Sha256 == current.PackageSha256).Select(row => row.Problems).SingleAsync(cancellation);
        var run = RunComputer.Compute(rules, await SchemeStore.InForceForWriting(context, cancellation), package, standing.ConvertAll(row => row.ToFlag()));
        await RunResults.Write(context, current.PackageSha256, StoredJson.Read<Problem[]>(problems), run, cause, cancellation);
    }
}
