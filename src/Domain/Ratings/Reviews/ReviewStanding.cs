using Toepan.Domain.Programme.Equipment;

namespace Toepan.Domain.Ratings.Reviews;

/// <summary>One part and the act it stands by: a signature, a sending back, or nothing yet.</summary>
public sealed record PartStanding(ReviewPart Part, ReviewAct? Act)
{
    public bool Signed => Act is { Kind: ReviewActKind.Sign };

    public bool SentBack => Act is { Kind: ReviewActKind.SendBack };
}

/// <summary>A concern and the act that accepts it, or null.</summary>
public sealed record ConcernStanding(RunConcern Concern, ReviewAct? Acceptance);

/// <summary>
/// Where the review of one rating stands. Nothing of it is stored: it follows from the acts about this rating that are not withdrawn, and
/// from the concerns known by then. A new reduction or rating begins with none.
/// </summary>
/// <param name="Rating">The rating.</param>
/// <param name="Parts">Every part in its order.</param>
/// <param name="Acceptance">The act that accepts a run not valid, or null.</param>
/// <param name="Concerns">Every concern.</param>
/// <param name="Approval">The act of approval, whether or not it still holds; see <see cref="Approved"/>.</param>
public sealed record ReviewStanding(
    ReviewedRating Rating, IReadOnlyList<PartStanding> Parts, ReviewAct? Acceptance, IReadOnlyList<ConcernStanding> Concerns, ReviewAct? Approval)
{
    /// <summary>Signatures that an approval needs: one a part.</summary>
    public static int SignaturesNeeded { get; } = Enum.GetValues<ReviewPart>().Length;

    public int Signatures => Parts.Count(part => part.Signed);

    /// <summary>Whether anybody has signed a part or sent one back.</summary>
    public bool Begun => Parts.Any(part => part.Act is not null);

    /// <summary>Whether the run counts: valid, or accepted with a reason.</summary>
    public bool Accepted => Rating.Valid || Acceptance is not null;

    public IEnumerable<RunConcern> OpenConcerns => Concerns.Where(one => one.Acceptance is null).Select(one => one.Concern);

    /// <summary>What an approval still lacks, one sentence each; empty = it may be given.</summary>
    public IReadOnlyList<string> Missing =>
    [
        .. Rating.Overall is null ? [$"There is no overall level: {Rating.NotRated ?? "something is missing"}."] : Array.Empty<string>(),
        .. Accepted ? Array.Empty<string>() : ["The run is not valid and nobody has accepted it with a reason."],
        .. Parts.Where(part => !part.Signed).Select(Unsigned),
        .. OpenConcerns.Select(concern => $"A concern is not accepted: {concern.Text}."),
    ];

    /// <summary>
    /// Whether the rating is approved: somebody approved it, nothing has come to be missing since, and no part was signed anew after that.
    /// </summary>
    public bool Approved => Approval is { } approval && Missing.Count == 0 && Parts.All(part => part.Act!.Id < approval.Id);

    /// <summary>Why an approval that was given does not hold, or null.</summary>
    public string? Suspended => Approval is null || Approved ? null
        : Missing.Count > 0 ? Missing[0]
        : "A part was signed anew after the approval: approve again.";

    /// <summary>The standing at one moment.</summary>
    /// <param name="rating">The rating that is current then.</param>
    /// <param name="acts">Acts about that rating, by number; later ones than <paramref name="at"/> are left out.</param>
    /// <param name="concerns">Concerns about the run; those known later are left out.</param>
    public static ReviewStanding Of(
        ReviewedRating rating, IEnumerable<ReviewAct> acts, IEnumerable<RunConcern> concerns, DateTimeOffset at)
    {
        var standing = acts.Where(act => act.At <= at && !(act.Withdrawal?.At <= at)).ToList();
        return new(
            rating,
            [.. Enum.GetValues<ReviewPart>().Select(part => new PartStanding(part, standing.LastOrDefault(act => act.Part == part)))],
            standing.LastOrDefault(act => act.Kind == ReviewActKind.AcceptRun),
            [.. concerns.Where(concern => concern.Since <= at).Select(concern => new ConcernStanding(concern, Accepting(standing, concern)))],
            standing.LastOrDefault(act => act.Kind == ReviewActKind.Approve));
    }

    private static ReviewAct? Accepting(List<ReviewAct> standing, RunConcern concern) =>
        standing.LastOrDefault(act => act.Kind == ReviewActKind.AcceptConcern && act.Concern == concern.Key);

    private static string Unsigned(PartStanding part) => part.Act is { } act
        ? $"{part.Part} was sent back by {act.By}: {act.Note}"
        : $"{part.Part} is not signed.";
}
