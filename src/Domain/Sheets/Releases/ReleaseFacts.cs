namespace Toepan.Domain.Sheets.Releases;

/// <summary>A reviewer's signature under one document.</summary>
public sealed record SheetSignature(string Sha256, string By, DateTimeOffset At);

/// <summary>That the manufacturer was sent one document, and until when an answer is waited for.</summary>
/// <param name="DueOn">Last day of the reply period.</param>
public sealed record ManufacturerNotice(long Id, string Sha256, string Recipient, DateOnly DueOn, string By, DateTimeOffset At);

/// <summary>What the manufacturer answered.</summary>
/// <param name="MayPrint">Whether they agree to its being printed on the sheet.</param>
public sealed record ManufacturerReply(long Id, string Text, bool MayPrint, DateOnly ReceivedOn, string By, DateTimeOffset At);

/// <summary>The manager's approval of one document with what had been answered by then.</summary>
/// <param name="EarlyReason">Why the reply period was not waited for; null where it was.</param>
public sealed record SheetApproval(long Id, string Sha256, long? ReplyId, string? EarlyReason, string By, DateTimeOffset At);

/// <summary>What a version of a sheet is.</summary>
public enum ReleaseKind
{
    /// <summary>The first.</summary>
    Release,

    /// <summary>Says something else than the version before, and why.</summary>
    Correction,

    /// <summary>Takes the sheet back: a statement stands in its place.</summary>
    Withdrawal,
}

/// <summary>A version that is public or will be.</summary>
public sealed record ReleaseVersion(int Version, ReleaseKind Kind, string? Sha256, DateTimeOffset VisibleFrom);

/// <summary>Everything the way of one vehicle's sheet to the public depends on, at one moment.</summary>
public sealed record ReleaseFacts
{
    /// <summary>Hash of the document as the data and the wording give it now.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Why it may not go out whatever is signed (run not valid, not rated, not approved), or null.</summary>
    public required string? NotForRelease { get; init; }

    /// <summary>Who wrote its wording.</summary>
    public required IReadOnlySet<string> Authors { get; init; }

    /// <summary>Latest signature.</summary>
    public SheetSignature? Signature { get; init; }

    /// <summary>Latest notice.</summary>
    public ManufacturerNotice? Notice { get; init; }

    /// <summary>Latest answer to the latest notice.</summary>
    public ManufacturerReply? Reply { get; init; }

    /// <summary>Latest approval.</summary>
    public SheetApproval? Approval { get; init; }

    /// <summary>Versions that were not taken back before their time, first to last.</summary>
    public IReadOnlyList<ReleaseVersion> Versions { get; init; } = [];

    /// <summary>The moment, by the clock of the store.</summary>
    public required DateTimeOffset Now { get; init; }

    /// <summary>The day, where the laboratory is.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>The version the public sees.</summary>
    public ReleaseVersion? Public => Versions.LastOrDefault(version => version.VisibleFrom <= Now);

    /// <summary>The version whose time has not come.</summary>
    public ReleaseVersion? Pending => Versions.FirstOrDefault(version => version.VisibleFrom > Now);

    /// <summary>Whether what the public sees is what the data give now.</summary>
    public bool IsPublicAsItStands => Public is { Kind: not ReleaseKind.Withdrawal } version && version.Sha256 == Sha256;

    /// <summary>A change behind a binding gives another document, and the signature falls with it.</summary>
    public bool SignatureStands => Signature?.Sha256 == Sha256;

    public bool NoticeStands => Notice?.Sha256 == Sha256;

    /// <summary>Whether the period in which the manufacturer may answer is over; it ends with its last day.</summary>
    public bool PeriodEnded => NoticeStands && Today > Notice!.DueOn;

    public bool ApprovalStands =>
        NotForRelease is null && SignatureStands && NoticeStands && Approval is { } approval && approval.Sha256 == Sha256
        && approval.ReplyId == Reply?.Id && approval.At >= Notice!.At;
}
