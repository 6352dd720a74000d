namespace Toepan.Domain.Sheets.Releases;

/// <summary>One step on the way to the public.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Done">Whether it is taken.</param>
/// <param name="Words">What happened, or what has to.</param>
/// <param name="By">Who took it.</param>
/// <param name="At">When.</param>
public sealed record ReleaseStep(string Name, bool Done, string Words, string? By = null, DateTimeOffset? At = null);

/// <summary>Facts → the steps in their order, and on whom the next one waits.</summary>
public sealed record ReleaseSteps(IReadOnlyList<ReleaseStep> All, string Stage, string? WaitsOn)
{
    public static ReleaseSteps Of(ReleaseFacts facts)
    {
        ReleaseStep[] steps = [Ready(facts), Signed(facts), Told(facts), Heard(facts), Approved(facts), Timed(facts), Out(facts)];
        var next = facts.IsPublicAsItStands ? -1 : Array.FindIndex(steps, step => !step.Done);
        return new(steps, StageWord(facts, next), next < 0 ? null : Waits(facts, next));
    }

    private static ReleaseStep Ready(ReleaseFacts facts) =>
        new("Reviewed", facts.NotForRelease is null, facts.NotForRelease ?? "The run's rating carries every review signature.");

    private static ReleaseStep Signed(ReleaseFacts facts) => facts switch
    {
        { SignatureStands: true } => new("Sheet signed", true, $"Document {Short(facts.Sha256)}.", facts.Signature!.By, facts.Signature.At),
        { Signature: { } fallen } => new("Sheet signed", false, $"The signature of {fallen.By} was under another document ({Short(fallen.Sha256)}) and fell when it changed."),
        _ => new("Sheet signed", false, "A reviewer who did not write the wording signs it."),
    };

    private static ReleaseStep Told(ReleaseFacts facts) => facts switch
    {
        { NoticeStands: true } => new("Manufacturer told", true, $"Sent to {facts.Notice!.Recipient}.", facts.Notice.By, facts.Notice.At),
        { Notice: not null } => new("Manufacturer told", false, "The manufacturer was told of another document than this one."),
        _ => new("Manufacturer told", false, "The manufacturer is sent the signed sheet."),
    };

    private static ReleaseStep Heard(ReleaseFacts facts) => facts switch
    {
        { NoticeStands: true, Reply: { } reply } =>
            new("Manufacturer heard", true, reply.MayPrint ? "Answered; the answer is printed on the sheet." : "Answered; they do not want it printed.", reply.By, reply.At),
        { PeriodEnded: true } => new("Manufacturer heard", true, $"No answer by {facts.Notice!.DueOn:yyyy-MM-dd}."),
        { ApprovalStands: true, Approval.EarlyReason: { } early } => new("Manufacturer heard", true, $"Not waited for: {early}"),
        { NoticeStands: true } => new("Manufacturer heard", false, $"An answer is waited for until {facts.Notice!.DueOn:yyyy-MM-dd}."),
        _ => new("Manufacturer heard", false, "Ten working days to answer."),
    };

    private static ReleaseStep Approved(ReleaseFacts facts) => facts.ApprovalStands
        ? new("Approved", true, facts.Approval!.EarlyReason ?? "Approved by the programme manager.", facts.Approval.By, facts.Approval.At)
        : new("Approved", false, "The programme manager approves.");

    private static ReleaseStep Timed(ReleaseFacts facts) => facts switch
    {
        { Pending: { } pending } => new("Time set", true, $"Public from {pending.VisibleFrom.UtcDateTime:yyyy-MM-dd HH:mm} UTC."),
        { IsPublicAsItStands: true } => new("Time set", true, "Its time has come."),
        _ => new("Time set", false, "A time is set, now or to come."),
    };

    private static ReleaseStep Out(ReleaseFacts facts) => facts switch
    {
        { IsPublicAsItStands: true } => new("Public", true, $"Version {facts.Public!.Version}.", At: facts.Public.VisibleFrom),
        { Public: { Kind: ReleaseKind.Withdrawal } gone } => new("Public", false, $"Withdrawn with version {gone.Version}."),
        { Public: { } other } => new("Public", false, $"Version {other.Version} is public and says something else."),
        _ => new("Public", false, "Nobody outside sees it."),
    };

    private static string StageWord(ReleaseFacts facts, int next) => facts switch
    {
        { Pending: not null } => "embargo set",
        { IsPublicAsItStands: true } => "public",
        { Public.Kind: ReleaseKind.Withdrawal } when !facts.SignatureStands => "withdrawn",
        _ => next switch { 0 => "in review", 1 => "to be signed", 2 => "to be notified", 3 => "manufacturer's reply", 4 => "to be approved", _ => "to be timed" },
    };

    private static string? Waits(ReleaseFacts facts, int next) => next switch
    {
        0 or 1 => "a reviewer",
        2 => "communications",
        3 => $"the manufacturer, until {facts.Notice?.DueOn:yyyy-MM-dd}",
        4 => "the programme manager",
        5 => "communications",
        _ => facts.Pending is { } pending ? $"{pending.VisibleFrom.UtcDateTime:yyyy-MM-dd HH:mm} UTC" : null,
    };

    private static string Short(string sha256) => sha256[..Math.Min(12, sha256.Length)];
}
