using Microsoft.EntityFrameworkCore;
using Toepan.Api.Channels.Tables;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Ratings.Reviews;

namespace Toepan.Api.Ratings.Reviews;

/// <summary>Who had a hand in a run: the uploader in all of it, who decided about channels in its data, who changed findings in its film.</summary>
internal static class ReviewInvolvement
{
    public static async Task<IReadOnlyList<Involvement>> Load(ProgrammeDb context, string test, CancellationToken cancellation)
    {
        var sha256 = await context.Set<CurrentRatingRow>().Where(row => row.Test == test).OrderByDescending(row => row.Id)
            .Select(row => row.Rating!.Reduction!.PackageSha256).FirstOrDefaultAsync(cancellation);
        var uploaders = await context.Set<PackageRow>().Where(row => row.Sha256 == sha256).Select(row => row.UploadedBy).ToListAsync(cancellation);
        var flaggers = await context.Set<ChannelFlagRow>().Where(row => row.PackageSha256 == sha256).Select(row => row.By)
            .Union(context.Set<ChannelFlagWithdrawalRow>().Where(row => context.Set<ChannelFlagRow>().Any(flag => flag.Id == row.FlagId && flag.PackageSha256 == sha256)).Select(row => row.By))
            .ToListAsync(cancellation);
        var finders = await context.Set<FindingChangeRow>().Where(row => row.Test == test).Select(row => row.By).Distinct().ToListAsync(cancellation);
        return
        [
            .. uploaders.Select(person => new Involvement(person, null, "uploaded its package")),
            .. flaggers.Select(person => new Involvement(person, ReviewPart.Data, "decided about its channels")),
            .. finders.Select(person => new Involvement(person, ReviewPart.Film, "changed its findings")),
        ];
    }
}
