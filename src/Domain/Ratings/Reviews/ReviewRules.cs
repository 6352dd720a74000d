using Toepan.Domain.Programme;

namespace Toepan.Domain.Ratings.Reviews;

/// <summary>What somebody had a hand in.</summary>
/// <param name="Person">Who.</param>
/// <param name="Part">The part that reviews it; null = the whole run.</param>
/// <param name="What">What they did, to follow "You": <c>uploaded its package</c>.</param>
public sealed record Involvement(string Person, ReviewPart? Part, string What);

/// <summary>What somebody wants to do about a rating.</summary>
public sealed record ReviewRequest(ReviewActKind Kind, ReviewPart? Part, string? Concern, string By);

/// <summary>What is known when somebody acts on a review.</summary>
/// <param name="Standing">Where the review stands.</param>
/// <param name="Conduct">Conduct verdicts of the run.</param>
/// <param name="Involved">Who had a hand in what is reviewed.</param>
/// <param name="RepeatDue">Whether a repeat is decided and not made.</param>
public sealed record ReviewSituation(
    ReviewStanding Standing, ConductJudgement Conduct, IReadOnlyList<Involvement> Involved, bool RepeatDue);

/// <summary>Which acts a review bears. Nobody reviews what they did themselves; what contradicts the facts is refused with the reason.</summary>
public static class ReviewRules
{
    /// <summary>Null where the act may be recorded, else the reason why not, in a sentence.</summary>
    public static string? Refusal(ReviewRequest request, ReviewSituation situation) =>
        OwnWork(request.By, request.Part, situation.Involved) ?? Impossible(request, situation);

    /// <summary>Why this person may not act on this part (null = on the run as a whole), or null where they may.</summary>
    public static string? OwnWork(string person, ReviewPart? part, IEnumerable<Involvement> involved) =>
        involved.FirstOrDefault(one => (one.Part is null || one.Part == part) && Same(one.Person, person)) is { } own
            ? $"You {own.What}: a person other than you reviews that."
            : null;

    /// <summary>Why this person may not take an act back, or null: one's own, or a manager's business who did not bring the package.</summary>
    public static string? WithdrawalRefusal(ReviewAct act, string person, bool manages, IEnumerable<Involvement> involved) =>
        act.Withdrawal is not null ? "It was withdrawn already."
        : Same(act.By, person) ? null
        : !manages ? $"Only {act.By} or a manager withdraws it."
        : OwnWork(person, act.Part, involved);

    private static string? Impossible(ReviewRequest request, ReviewSituation situation) => request.Kind switch
    {
        ReviewActKind.Sign => Signing(situation, situation.Standing.Parts.Single(part => part.Part == request.Part)),
        ReviewActKind.SendBack => situation.Standing.Parts.Single(part => part.Part == request.Part) is { SentBack: true, Act: { } act }
            ? $"{act.By} has sent it back already."
            : null,
        ReviewActKind.AcceptRun => Accepting(situation),
        ReviewActKind.AcceptConcern => AcceptingConcern(situation.Standing.Concerns.FirstOrDefault(one => one.Concern.Key == request.Concern)),
        _ => Approving(situation),
    };

    private static string? Signing(ReviewSituation situation, PartStanding part) => situation switch
    {
        { RepeatDue: true } => RepeatFirst,
        { Standing.Rating: { Overall: null, NotRated: var why } } => $"There is no rating to sign: {why ?? "something is missing"}.",
        { Standing.Accepted: false } => "The run is not valid: a reviewer accepts it with a reason first, or it is repeated.",
        _ when part is { Signed: true, Act: { } signed } => $"{signed.By} has signed it already.",
        _ when part is { SentBack: true, Act: { } back } =>
            $"{back.By} has sent it back: it is signed when that is withdrawn, or when a new reduction has answered it.",
        _ => null,
    };

    private static string? Accepting(ReviewSituation situation) => situation switch
    {
        { RepeatDue: true } => RepeatFirst,
        { Standing.Acceptance: { } act } => $"{act.By} has accepted it already.",
        _ => AcceptanceRules.Refusal(situation.Conduct, situation.Standing.Rating.Overall),
    };

    private static string? AcceptingConcern(ConcernStanding? concern) => concern switch
    {
        null => "The run has no such concern.",
        { Acceptance: { } act } => $"{act.By} has accepted it already.",
        _ => null,
    };

    private static string? Approving(ReviewSituation situation) => situation switch
    {
        { RepeatDue: true } => RepeatFirst,
        { Standing.Approved: true, Standing.Approval: { } act } => $"{act.By} has approved it already.",
        { Standing.Missing: { Count: > 0 } missing } => string.Join(" ", missing),
        _ => null,
    };

    private const string RepeatFirst = "A repeat of the run is decided and not made: that comes first.";

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
