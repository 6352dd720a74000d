using Toepan.Domain.Packages;

namespace Toepan.Api.Measures;

/// <summary>A finding as the contract writes it.</summary>
/// <param name="TimeMs">Film time, ms from contact; null = inspection.</param>
/// <param name="Camera">Camera, or null.</param>
/// <param name="Kind">Kind.</param>
/// <param name="Region">Region.</param>
/// <param name="Severity">note, concern or severe.</param>
/// <param name="Note">Free text.</param>
/// <param name="Position">Seat position; null = the driver.</param>
/// <param name="Line">Line in the package's findings.csv; 0 for one added on the page.</param>
/// <param name="Id">Stable id.</param>
/// <param name="Version">Number of changes; name it when changing the finding.</param>
/// <param name="Origin">package or page.</param>
/// <param name="Standing">Whether it counts.</param>
/// <param name="Without">Why it does not, or null.</param>
/// <param name="Changes">What was done to it on the page.</param>
public sealed record FindingJson(
    double? TimeMs, string? Camera, string Kind, string Region, FindingSeverity Severity, string Note, int? Position, int Line, string Id, int Version,
    string Origin, bool Standing, string? Without, IReadOnlyList<FindingChangeJson> Changes)
{
    public static FindingJson Of(KeptFinding kept)
    {
        var says = kept.Finding;
        return new(
            says.TimeMs, says.Camera, says.Kind, says.Region, says.Severity, says.Note, says.Position, says.Line, kept.Id, kept.Version,
            kept.InPackage ? "package" : "page", kept.Standing, kept.Without, [.. kept.Changes.Select(FindingChangeJson.Of)]);
    }
}

/// <summary>One change of a finding: who, when, why, and what it says from then on.</summary>
public sealed record FindingChangeJson(int Version, FindingAct Act, string By, DateTimeOffset At, string? Reason, Finding Finding)
{
    public static FindingChangeJson Of(FindingChange change) => new(change.Version, change.Act, change.By, change.At, change.Reason, change.Finding);
}

/// <summary>A finding to keep.</summary>
/// <param name="TimeMs">Film time, ms from contact; left out = inspection.</param>
/// <param name="Camera">Camera.</param>
/// <param name="Kind">Kind.</param>
/// <param name="Region">Region.</param>
/// <param name="Severity">note, concern or severe.</param>
/// <param name="Note">Free text.</param>
/// <param name="Position">Seat position; left out = the driver.</param>
/// <param name="Reason">Why; required for a correction.</param>
/// <param name="Version">The version last read; required for a correction.</param>
public sealed record FindingDraftJson(
    double? TimeMs, string? Camera, string? Kind, string? Region, string? Severity, string? Note, int? Position, string? Reason, uint? Version)
{
    /// <summary>The draft, or why the severity is none.</summary>
    internal Outcome<FindingDraft> ToDraft() => Severities.TryGetValue(Severity ?? "", out var severity)
        ? new FindingDraft(TimeMs, Camera, Kind ?? "", Region ?? "", severity, Note, Position)
        : Failure.BadRequest($"severity is '{Severity}'; it is one of {string.Join(", ", Severities.Keys)}.");

    private static readonly SortedDictionary<string, FindingSeverity> Severities = new(StringComparer.Ordinal)
    {
        ["concern"] = FindingSeverity.Concern,
        ["note"] = FindingSeverity.Note,
        ["severe"] = FindingSeverity.Severe,
    };
}

/// <summary>Why a finding is withdrawn, and the version last read.</summary>
public sealed record FindingWithdrawalJson(string? Reason, uint? Version);

/// <summary>A finding changed, and the reduction that followed.</summary>
public sealed record FindingResultJson(FindingJson Finding, ReductionSummary Reduction)
{
    public static FindingResultJson Of(FindingResult result) => new(FindingJson.Of(result.Finding), result.Reduction);
}
