using Microsoft.EntityFrameworkCore;
using Toepan.Api.Channels.Tables;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Packages;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Ratings.Reviews;

namespace Toepan.Api.Ratings.Reviews;

/// <summary>
/// Who had a hand in a run: in all of it whoever uploaded its package or brought it back, in its conduct who signed its preparation, in its data who
/// decided about channels, in its film who changed findings.
/// </summary>
internal static class ReviewInvolvement
{
    public static async Task<IReadOnlyList<Involvement>> Load(ProgrammeDb context, string test, CancellationToken cancellation)
    {
        var sha256 = await context.Set<CurrentRatingRow>().Where(row => row.Test == test).OrderByDescending(row => row.Id)
            .Select(row => row.Rating!.Reduction!.PackageSha256).FirstOrDefaultAsync(cancellation);
        var uploaders = await context.Set<PackageRow>().Where(row => row.Sha256 == sha256).Select(row => row.UploadedBy)
            .Union(context.Set<ReductionRow>().Where(row => row.PackageSha256 == sha256 && row.What.StartsWith(RunCause.Replaced)).Select(row => row.By))
            .ToListAsync(cancellation);
        var preparers = await context.Set<PlannedRunRow>().Where(row => row.Test == test && row.PreparedBy != null).Select(row => row.PreparedBy!).ToListAsync(cancellation);
        var flaggers = await context.Set<ChannelFlagRow>().Where(row => row.PackageSha256 == sha256).Select(row => row.By)
            .Union(context.Set<ChannelFlagWithdrawalRow>().Where(row => context.Set<ChannelFlagRow>().Any(flag => flag.Id == row.FlagId && flag.PackageSha256 == sha256)).Select(row => row.By))
            .ToListAsync(cancellation);
        var finders = await context.Set<FindingChangeRow>().Where(row => row.Test == test).Select(row => row.By).Distinct().ToListAsync(cancellation);
        return
        [
            .. uploaders.Select(person => new Involvement(person, null, "uploaded its package")),
            .. preparers.Select(person => new Involvement(person, ReviewPart.Conduct, "signed its preparation")),
            .. flaggers.Select(person => new Involvement(person, ReviewPart.Data, "decided about its channels")),
            .. finders.Select(person => new Involvement(person, ReviewPart.Film, "changed its findings")),
        ];
    }
}
