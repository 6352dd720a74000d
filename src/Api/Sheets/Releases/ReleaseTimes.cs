using Microsoft.EntityFrameworkCore;
using Toepan.Api.Sheets.Releases.Tables;
using Toepan.Api.Store;
using Toepan.Api.Store.Tables;
using Toepan.Domain.Sheets.Releases;

namespace Toepan.Api.Sheets.Releases;

/// <summary>A version of a sheet that is public, or will be, and the run it says something about.</summary>
internal sealed record ReleaseTime(string Test, string VehicleKey, ReleaseKind Kind, DateTimeOffset VisibleFrom);

/// <summary>A notice that waits for the manufacturer's answer.</summary>
internal sealed record ReplyAwaited(string VehicleKey, string Recipient, DateOnly DueOn, DateTimeOffset SentAt);

/// <summary>What release acts mean for runs and the board.</summary>
internal static class ReleaseTimes
{
    /// <summary>Every version that was not taken back, by its time.</summary>
    public static Task<List<ReleaseTime>> Load(ProgrammeDb context, CancellationToken cancellation) => context.Set<ReleaseActRow>().AsNoTracking()
        .Where(act => context.Set<ReleaseRow>().Any(row => row.Slug == act.Slug && row.Version == act.Version && row.VisibleTo == null))
        .OrderBy(act => act.VisibleFrom).ThenBy(act => act.Version)
        .Select(act => new ReleaseTime(act.Test, act.VehicleKey, act.Kind, act.VisibleFrom)).ToListAsync(cancellation);

    /// <summary>The latest notice of each vehicle where neither an answer came nor its document was approved.</summary>
    public static async Task<IReadOnlyList<ReplyAwaited>> Awaited(ProgrammeDb context, CancellationToken cancellation) =>
        await context.Set<ManufacturerNoticeRow>().AsNoTracking()
            .Where(notice => !context.Set<ManufacturerNoticeRow>().Any(later => later.VehicleKey == notice.VehicleKey && later.Id > notice.Id)
                && !context.Set<ManufacturerReplyRow>().Any(reply => reply.NoticeId == notice.Id)
                && !context.Set<SheetApprovalRow>().Any(approval => approval.VehicleKey == notice.VehicleKey && approval.Sha256 == notice.Sha256))
            .Select(notice => new ReplyAwaited(notice.VehicleKey, notice.Recipient, notice.DueOn, notice.At)).ToListAsync(cancellation);
}
