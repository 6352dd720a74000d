using Toepan.Api.Ratings.Reviews;
using Toepan.Api.Sheets.Releases;
using Toepan.Api.Store;
using Toepan.Domain.Programme.Equipment;
using Toepan.Domain.Sheets.Releases;

namespace Toepan.Api.Programme;

/// <summary>What the way of sheets to the public asks of people.</summary>
/// <param name="Waiting">Versions whose time has not come, by their time.</param>
/// <param name="Replies">Notices that wait for the manufacturer.</param>
/// <param name="Corrections">Public runs about which something came up.</param>
internal sealed record BoardReleases(IReadOnlyList<ReleaseTime> Waiting, IReadOnlyList<ReplyAwaited> Replies, IReadOnlyList<CorrectionDue> Corrections)
{
    public static async Task<BoardReleases> Load(ProgrammeDb context, DateTimeOffset now, CancellationToken cancellation)
    {
        var times = await ReleaseTimes.Load(context, cancellation);
        var standing = times.Where(time => time.VisibleFrom <= now).GroupBy(time => time.VehicleKey).Select(vehicle => vehicle.Last())
            .Where(time => time.Kind != ReleaseKind.Withdrawal).DistinctBy(time => time.Test).ToDictionary(time => time.Test, time => time.VisibleFrom, StringComparer.Ordinal);
        return new(
            [.. times.Where(time => time.VisibleFrom > now)], await ReleaseTimes.Awaited(context, cancellation),
            standing.Count == 0 ? [] : await CorrectionIndex.Load(context, standing, cancellation));
    }
}
