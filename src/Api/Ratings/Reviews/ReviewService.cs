using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings.Reviews;

namespace Toepan.Api.Ratings.Reviews;

/// <summary>
/// Reviews of runs: conduct, data, structure and film are signed each by a person who had no hand in it, then a manager approves. Every act is about one
/// rating; a new reduction or rating begins a new review.
/// </summary>
public sealed class ReviewService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    public const int LongestNote = 2_000;

    /// <summary>The review as the viewer sees it.</summary>
    public async Task<Outcome<RunReviewDetail>> Get(Viewer viewer, string test, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await Detail(context, viewer, test, cancellation) is { } detail ? detail : Failure.NotFound("test", test);
    }

    /// <summary>
    /// Records an act. Reviewers, managers and administrators sign, send back and accept; managers and administrators approve. 409 where the rating is not
    /// the one the viewer had in front of them, or the act contradicts the facts.
    /// </summary>
    public async Task<Outcome<RunReviewDetail>> Act(Viewer viewer, string test, NewReviewAct act, CancellationToken cancellation = default)
    {
        if ((ReviewAccess.To(viewer, act.Kind) ?? Check(act)) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await RunLock.Begin(context, test, cancellation);
        if (await Situation(context, test, cancellation) is not { } situation)
        {
            return Failure.NotFound("test", test);
        }

        if (situation.Standing.Rating.RatingId != act.RatingId)
        {
            return Moved(test);
        }

        if (ReviewRules.Refusal(new(act.Kind, act.Part, act.Concern, viewer.Name), situation) is { } no)
        {
            return new Failure(FailureKind.Conflict, "Not possible", no);
        }

        var row = new ReviewActRow
        {
            Test = test, RatingId = act.RatingId, Kind = act.Kind, Part = act.Part, Concern = act.Concern, Note = act.Note?.Trim() ?? "", By = viewer.Name, At = time.GetUtcNow(),
        };
        context.Add(row);
        await context.SaveChangesAsync(cancellation);
        await audit.Append(context, viewer, new AuditNote(RunReviewDetail.Key(act.Kind, act.Part, act.Concern), $"test/{test}", null, new { row.Id, row.RatingId, row.Note }), cancellation);
        await transaction.CommitAsync(cancellation);
        return (await Detail(context, viewer, test, cancellation))!;
    }

    /// <summary>Takes an act back with a reason: one's own, or any as a manager who had no hand in the work.</summary>
    public async Task<Outcome<RunReviewDetail>> Withdraw(Viewer viewer, string test, long act, string? reason, CancellationToken cancellation = default)
    {
        if ((ReviewAccess.To(viewer, ReviewActKind.Sign) ?? Texts.Check("A reason", reason, LongestNote)) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await RunLock.Begin(context, test, cancellation);
        var row = await context.Set<ReviewActRow>().AsNoTracking().Include(found => found.Withdrawal).SingleOrDefaultAsync(found => found.Id == act && found.Test == test, cancellation);
        if (row is null)
        {
            return Failure.NotFound($"review act of test '{test}'", $"{act}");
        }

        var involved = await ReviewInvolvement.Load(context, test, cancellation);
        if (ReviewRules.WithdrawalRefusal(row.ToAct(), viewer.Name, viewer.Is(Role.Manager, Role.Administrator), involved) is { } no)
        {
            return new Failure(FailureKind.Conflict, "Not possible", no);
        }

        context.Add(new ReviewWithdrawalRow { ActId = act, Reason = reason!.Trim(), By = viewer.Name, At = time.GetUtcNow() });
        await context.SaveChangesAsync(cancellation);
        await audit.Append(context, viewer, new AuditNote("withdraw review act", $"test/{test}", new { row.Id, row.Kind, row.Part, row.By }, new { reason = reason.Trim() }), cancellation);
        await transaction.CommitAsync(cancellation);
        return (await Detail(context, viewer, test, cancellation))!;
    }

    private async Task<RunReviewDetail?> Detail(ProgrammeDb context, Viewer viewer, string test, CancellationToken cancellation)
    {
        if (await Situation(context, test, cancellation) is not { } situation)
        {
            return null;
        }

        var current = situation.Standing.Rating.RatingId;
        var earlier = await context.Set<ReviewActRow>().AsNoTracking().Include(row => row.Withdrawal)
            .Where(row => row.Test == test && (row.RatingId != current || row.Withdrawal != null)).OrderByDescending(row => row.Id).ToListAsync(cancellation);
        return new(test, situation.Standing, earlier.ConvertAll(row => row.ToAct()), situation.Involved, ReviewAccess.Refusals(viewer, situation));
    }

    private async Task<ReviewSituation?> Situation(ProgrammeDb context, string test, CancellationToken cancellation)
    {
        if (await CurrentRun.Find(context, test, cancellation) is not { } current)
        {
            return null;
        }

        var review = (await ReviewIndex.Load(context, [test], cancellation))[test];
        var conduct = (await CurrentRun.ReadReduction(context, current.ReductionId, cancellation)).Conduct;
        var last = await context.Set<RepeatDecisionRow>().AsNoTracking().Where(row => row.Test == test).OrderByDescending(row => row.Id).Select(row => (RepeatChoice?)row.Choice).FirstOrDefaultAsync(cancellation);
        var due = last == RepeatChoice.Repeat && !await context.Set<TestRunRow>().AnyAsync(run => run.RepeatOf == test, cancellation);
        return new(review.Standing(time.GetUtcNow()), conduct, await ReviewInvolvement.Load(context, test, cancellation), due);
    }

    private static Failure Moved(string test) => new(
        FailureKind.Conflict, "Changed meanwhile",
        $"Test '{test}' has a new rating since you opened it, so what you saw is not what would be signed. Nothing was kept: look at it again.");

    private static Failure? Check(NewReviewAct act)
    {
        var parted = act.Kind is ReviewActKind.Sign or ReviewActKind.SendBack;
        if (parted != act.Part is not null)
        {
            return Failure.BadRequest(parted ? $"part is missing: one of {string.Join(", ", Enum.GetNames<ReviewPart>()).ToLowerInvariant()}." : "part is given only with a signature or a sending back.");
        }

        if ((act.Kind == ReviewActKind.AcceptConcern) != act.Concern is not null)
        {
            return Failure.BadRequest("concern is given with the acceptance of a concern, and only then.");
        }

        return act.Kind is ReviewActKind.Sign or ReviewActKind.Approve && string.IsNullOrWhiteSpace(act.Note) ? null
            : Texts.Check(act.Kind is ReviewActKind.Sign or ReviewActKind.Approve ? "A note" : "A reason", act.Note, LongestNote);
    }
}
