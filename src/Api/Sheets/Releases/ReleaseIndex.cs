using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme;
using Toepan.Api.Ratings.Reviews;
using Toepan.Api.Sheets.Releases.Tables;
using Toepan.Api.Store;
using Toepan.Api.Store.Tables;
using Toepan.Domain.Sheets;
using Toepan.Domain.Sheets.Releases;

namespace Toepan.Api.Sheets.Releases;

/// <summary>Where one vehicle's sheet stands: the document of the day and the facts of its way.</summary>
internal sealed record ReleaseFile(string Vehicle, string Title, SheetDocument Signed, string? Slug, IReadOnlyList<ReleaseActRow> Acts, ReleaseFacts Facts);

/// <summary>Stored facts → the way of a vehicle's sheet.</summary>
internal static class ReleaseIndex
{
    /// <summary>Null where there is no such vehicle or no run rates it.</summary>
    public static async Task<ReleaseFile?> Load(ProgrammeDb context, SheetService sheets, string vehicle, DateTimeOffset clock, CancellationToken cancellation)
    {
        if (await VehicleService.Find(context, vehicle, cancellation) is not { RatedBy: { } test } detail
            || await sheets.Compose(context, test, cancellation) is not { } signed)
        {
            return null;
        }

        var standing = (await ApprovalIndex.Load(context, [test], clock, cancellation)).GetValueOrDefault(test);
        var reason = Words(signed) ?? (standing is { Approved: true } ? null : standing?.WhyNot ?? "Nobody has approved the rating.");
        var acts = await context.Set<ReleaseActRow>().AsNoTracking().Where(row => row.VehicleKey == vehicle).OrderBy(row => row.Version).ToListAsync(cancellation);
        var facts = await Facts(context, vehicle, SheetDocumentJson.Hash(signed), reason, acts, clock, cancellation);
        return new(vehicle, detail.Vehicle.Name.Title, signed, acts is [.., var last] ? last.Slug : null, acts, facts);
    }

    /// <summary>The clock of the store, which alone says whether an embargo has ended.</summary>
    public static Task<DateTimeOffset> Clock(ProgrammeDb context, CancellationToken cancellation) =>
        context.Database.SqlQuery<DateTimeOffset>($"SELECT clock_timestamp() AS \"Value\"").SingleAsync(cancellation);

    private static string? Words(SheetDocument signed) =>
        signed.NotForRelease is null ? null : signed.In("en").NotForRelease?.Text ?? "The sheet is not for release.";

    private static async Task<ReleaseFacts> Facts(
        ProgrammeDb context, string vehicle, string sha256, string? reason, List<ReleaseActRow> acts, DateTimeOffset clock, CancellationToken cancellation)
    {
        var signature = await context.Set<SheetSignatureRow>().AsNoTracking().Where(row => row.VehicleKey == vehicle).OrderBy(row => row.Id).LastOrDefaultAsync(cancellation);
        var notice = await context.Set<ManufacturerNoticeRow>().AsNoTracking().Where(row => row.VehicleKey == vehicle).OrderBy(row => row.Id).LastOrDefaultAsync(cancellation);
        var reply = notice is null ? null
            : await context.Set<ManufacturerReplyRow>().AsNoTracking().Where(row => row.NoticeId == notice.Id).OrderBy(row => row.Id).LastOrDefaultAsync(cancellation);
        var approval = await context.Set<SheetApprovalRow>().AsNoTracking().Where(row => row.VehicleKey == vehicle).OrderBy(row => row.Id).LastOrDefaultAsync(cancellation);
        return new ReleaseFacts
        {
            Sha256 = sha256, NotForRelease = reason, Authors = new HashSet<string>(), Now = await Clock(context, cancellation),
            Today = DateOnly.FromDateTime(clock.UtcDateTime), Versions = await Versions(context, acts, cancellation),
            Signature = signature is null ? null : new(signature.Sha256, signature.By, signature.At),
            Notice = notice is null ? null : new(notice.Id, notice.Sha256, notice.Recipient, notice.DueOn, notice.By, notice.At),
            Reply = reply is null ? null : new(reply.Id, reply.Text, reply.MayPrint, reply.ReceivedOn, reply.By, reply.At),
            Approval = approval is null ? null : new(approval.Id, approval.Sha256, approval.ReplyId, approval.EarlyReason, approval.By, approval.At),
        };
    }

    private static async Task<IReadOnlyList<ReleaseVersion>> Versions(ProgrammeDb context, List<ReleaseActRow> acts, CancellationToken cancellation)
    {
        if (acts.Count == 0)
        {
            return [];
        }

        var slug = acts[^1].Slug;
        var times = await context.Set<ReleaseRow>().AsNoTracking().Where(row => row.Slug == slug && row.VisibleTo == null)
            .ToDictionaryAsync(row => row.Version, row => row.VisibleFrom, cancellation);
        return [.. acts.Where(act => times.ContainsKey(act.Version)).Select(act => new ReleaseVersion(act.Version, act.Kind, act.Sha256, times[act.Version]))];
    }
}
