using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;
using Toepan.Domain.Sheets.Releases;

namespace Toepan.Api.Sheets.Releases;

/// <summary>To whom a notice was sent.</summary>
public sealed record NewNotice(string? Recipient);

/// <summary>Why a correction does not wait for the reply period; null = it did.</summary>
public sealed record NewApproval(string? EarlyReason);

/// <summary>A time: an instant, or wall-clock time with its zone; neither = now.</summary>
public sealed record NewRelease(DateTimeOffset? At, string? Local, string? Zone, string? Why);

/// <summary>Why a sheet is withdrawn.</summary>
public sealed record NewWithdrawal(string? Why);

/// <summary>The way of sheets to the public.</summary>
internal static class ReleaseEndpoints
{
    public static void MapReleases(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/releases", "Releases");
        group.MapGet("", List).Describe("listReleases", "Where every sheet stands", "Every rated vehicle: stage, on whom it waits, steps, versions.");
        var one = app.MapApiGroup("/releases/{vehicle}", "Releases").ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status409Conflict);
        one.MapGet("", Get).Describe("getRelease", "Where one sheet stands", "Steps with who and when, the document's hash, versions and their times.");
        one.MapPost("/signature", Sign).Describe("signSheet", "Sign the sheet", "A reviewer signs the document of the day. Any change behind it lets the signature fall.");
        one.MapPost("/notice", Notify).Describe("notifyManufacturer", "Record the manufacturer's notice", "To whom the signed document was sent; ten working days to answer begin.");
        one.MapPost("/reply", Reply).Describe("recordReply", "Record the manufacturer's answer", "Printed on the sheet where they agree.");
        one.MapPost("/approval", Approve).Describe("approveSheet", "Approve the sheet", "The programme manager, after the answer or the reply period; a correction earlier for a stated reason.");
        one.MapPost("/release", Release).Describe("releaseSheet", "Release now or at a time", "at = instant; or local = wall-clock time with zone = IANA name; neither = now. A correction says why.");
        one.MapPut("/embargo", Move).Describe("moveEmbargo", "Move an embargo", "Until ten seconds before its time.");
        one.MapDelete("/embargo", TakeBack).Describe("withdrawEmbargo", "Withdraw an embargo", "Until ten seconds before its time; that version is never seen.");
        one.MapPost("/withdrawal", Withdraw).Describe("withdrawSheet", "Withdraw a public sheet", "A statement with the reason stands in its place; every version stays at its address.");
    }

    private static async Task<Results<Ok<IReadOnlyList<ReleaseStanding>>, ProblemHttpResult>> List(Viewer viewer, ReleaseService releases, CancellationToken cancellation) =>
        (await releases.List(viewer, cancellation)).Answer();

    private static async Task<Results<Ok<ReleaseStanding>, ProblemHttpResult>> Get(Viewer viewer, ReleaseService releases, string vehicle, CancellationToken cancellation) =>
        (await releases.Get(viewer, vehicle, cancellation)).Answer();

    private static async Task<Results<Ok<ReleaseStanding>, ProblemHttpResult>> Sign(Viewer viewer, ReleaseService releases, string vehicle, CancellationToken cancellation) =>
        (await releases.Sign(viewer, vehicle, cancellation)).Answer();

    private static async Task<Results<Ok<ReleaseStanding>, ProblemHttpResult>> Notify(
        Viewer viewer, ReleaseService releases, string vehicle, NewNotice notice, CancellationToken cancellation) =>
        (await releases.Notify(viewer, vehicle, notice.Recipient, cancellation)).Answer();

    private static async Task<Results<Ok<ReleaseStanding>, ProblemHttpResult>> Reply(
        Viewer viewer, ReleaseService releases, string vehicle, NewReply reply, CancellationToken cancellation) =>
        (await releases.Answer(viewer, vehicle, reply, cancellation)).Answer();

    private static async Task<Results<Ok<ReleaseStanding>, ProblemHttpResult>> Approve(
        Viewer viewer, ReleaseService releases, string vehicle, NewApproval approval, CancellationToken cancellation) =>
        (await releases.Approve(viewer, vehicle, approval.EarlyReason, cancellation)).Answer();

    private static async Task<Results<Ok<ReleaseStanding>, ProblemHttpResult>> Release(
        Viewer viewer, ReleaseService releases, string vehicle, NewRelease release, CancellationToken cancellation) =>
        Instant(release) is { Refusal: { } refusal } ? Failure.BadRequest(refusal).ToProblem()
            : (await releases.Release(viewer, vehicle, Instant(release)?.At, release.Why, cancellation)).Answer();

    private static async Task<Results<Ok<ReleaseStanding>, ProblemHttpResult>> Move(
        Viewer viewer, ReleaseService releases, string vehicle, NewRelease release, CancellationToken cancellation) =>
        Instant(release) is { At: { } at } ? (await releases.Move(viewer, vehicle, at, cancellation)).Answer()
            : Failure.BadRequest(Instant(release)?.Refusal ?? "Say to which time the embargo is moved.").ToProblem();

    private static async Task<Results<Ok<ReleaseStanding>, ProblemHttpResult>> TakeBack(Viewer viewer, ReleaseService releases, string vehicle, CancellationToken cancellation) =>
        (await releases.TakeBack(viewer, vehicle, cancellation)).Answer();

    private static async Task<Results<Ok<ReleaseStanding>, ProblemHttpResult>> Withdraw(
        Viewer viewer, ReleaseService releases, string vehicle, NewWithdrawal withdrawal, CancellationToken cancellation) =>
        (await releases.Withdraw(viewer, vehicle, withdrawal.Why, cancellation)).Answer();

    private static EmbargoReading? Instant(NewRelease release) =>
        release.At is { } at ? new(at, null) : release.Local is null ? null : EmbargoTime.Read(release.Local, release.Zone ?? "UTC");
}
