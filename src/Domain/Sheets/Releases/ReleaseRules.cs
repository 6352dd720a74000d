namespace Toepan.Domain.Sheets.Releases;

/// <summary>What may be done on the way to the public; each rule gives the reason against, or null.</summary>
public static class ReleaseRules
{
    /// <summary>An embargo is not touched this shortly before its time: a change could commit after readers have seen the sheet.</summary>
    public static TimeSpan LastTouch { get; } = TimeSpan.FromSeconds(10);

    /// <summary>How long a change of level is announced on top of a sheet.</summary>
    public const int BannerMonths = 12;

    /// <summary>Longest time ahead an embargo may be set.</summary>
    public static TimeSpan Farthest { get; } = TimeSpan.FromDays(366);

    public static string? Sign(ReleaseFacts facts, string who) => facts switch
    {
        { NotForRelease: { } reason } => reason,
        { IsPublicAsItStands: true } => "The sheet is public as it stands: there is nothing new to sign.",
        { SignatureStands: true } => $"{facts.Signature!.By} has signed this document already.",
        _ when facts.Authors.Contains(who) => "Who wrote the wording does not sign it: another reviewer has to.",
        _ => null,
    };

    public static string? Notify(ReleaseFacts facts) => facts switch
    {
        { NotForRelease: { } reason } => reason,
        { SignatureStands: false } => "No signature stands under this document: a reviewer signs before the manufacturer is told.",
        { NoticeStands: true } => $"{facts.Notice!.Recipient} was sent this document already; an answer is waited for until {facts.Notice.DueOn:yyyy-MM-dd}.",
        _ => null,
    };

    public static string? Answer(ReleaseFacts facts, DateOnly receivedOn) => facts switch
    {
        { Notice: null } => "No notice was sent: there is nothing to answer.",
        _ when receivedOn > facts.Today.AddDays(1) => $"{receivedOn:yyyy-MM-dd} is yet to come.",
        { IsPublicAsItStands: true } => "The sheet is public as it stands. A later answer belongs into a correction.",
        _ => null,
    };

    /// <param name="facts">What is known.</param>
    /// <param name="who">The manager.</param>
    /// <param name="earlyReason">Why the reply period is not waited for: taken for corrections alone, since what is wrong is public meanwhile.</param>
    public static string? Approve(ReleaseFacts facts, string who, string? earlyReason) => facts switch
    {
        { NotForRelease: { } reason } => reason,
        { SignatureStands: false } => facts.Signature is null
            ? "No reviewer has signed the sheet."
            : "The data or the wording changed after the signature, which therefore fell: a reviewer has to sign again.",
        { NoticeStands: false } => facts.Notice is null
            ? "The manufacturer has not been told."
            : "The manufacturer was told of another document than this one: send a new notice.",
        { ApprovalStands: true } => $"{facts.Approval!.By} has approved this document already.",
        _ when facts.Signature!.By == who => "Who signed the sheet does not approve it too.",
        { Reply: null, PeriodEnded: false } when earlyReason is null => Early(facts),
        { Reply: null, PeriodEnded: false, Public: null } =>
            $"A first release waits for the manufacturer's answer or the end of the reply period on {facts.Notice!.DueOn:yyyy-MM-dd}, whatever the reason.",
        _ => null,
    };

    /// <summary>Whether the approved document may go out at a time.</summary>
    /// <param name="facts">What is known.</param>
    /// <param name="at">The time; null = now.</param>
    /// <param name="step">Times are whole multiples of this, the most that any cache may keep an answer.</param>
    /// <param name="why">Why a public sheet is corrected; null for a first release.</param>
    public static string? Release(ReleaseFacts facts, DateTimeOffset? at, TimeSpan step, string? why) => facts switch
    {
        { NotForRelease: { } reason } => reason,
        { Pending: { } pending } => $"Version {pending.Version} waits for {pending.VisibleFrom.UtcDateTime:yyyy-MM-dd HH:mm} UTC: move or withdraw that embargo.",
        { IsPublicAsItStands: true } => "The sheet is public as it stands.",
        { ApprovalStands: false } => "No approval stands for this document.",
        { Public: not null } when why is null => "A correction says why.",
        _ => Time(facts, at, step),
    };

    public static string? Time(ReleaseFacts facts, DateTimeOffset? at, TimeSpan step) => at switch
    {
        null => null,
        { } time when time <= facts.Now => $"{time.UtcDateTime:yyyy-MM-dd HH:mm} UTC has passed. Release now, or give a time to come.",
        { } time when time > facts.Now + Farthest => "An embargo lies at most a year ahead.",
        { } time when time.Ticks % step.Ticks != 0 => $"Give a time in whole steps of {step:g}: that is how often caches ask again.",
        _ => null,
    };

    /// <summary>Whether an embargo may still be moved or withdrawn.</summary>
    public static string? Touch(ReleaseFacts facts) => facts switch
    {
        { Pending: null, Public: null } => "No embargo is set.",
        { Pending: null } => "The sheet is public. What is public is corrected or withdrawn in the open, not taken back.",
        { Pending: { } pending } when pending.VisibleFrom - facts.Now < LastTouch =>
            $"The embargo ends in less than {LastTouch.TotalSeconds:0} seconds: it is too late to change it.",
        _ => null,
    };

    public static string? Withdraw(ReleaseFacts facts) => facts switch
    {
        { Public: null } => "The sheet is not public.",
        { Public.Kind: ReleaseKind.Withdrawal } => "The sheet is withdrawn already.",
        { Pending: not null } => "A correction waits for its time: withdraw its embargo first.",
        _ => null,
    };

    private static string Early(ReleaseFacts facts) => facts.Public is null
        ? $"The manufacturer has until {facts.Notice!.DueOn:yyyy-MM-dd} to answer and has not answered yet."
        : $"The manufacturer has until {facts.Notice!.DueOn:yyyy-MM-dd} to answer. A correction may go out earlier for a stated reason.";
}
