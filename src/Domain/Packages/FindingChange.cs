namespace Toepan.Domain.Packages;

/// <summary>What somebody did to a finding on the page.</summary>
public enum FindingAct
{
    Added,
    Corrected,
    Withdrawn,
}

/// <summary>One change of a run's findings, made beside the package, which stays as it was.</summary>
/// <param name="Id">Id of the finding: see <see cref="FindingId"/>.</param>
/// <param name="Version">1 for the first change of that finding, then 2, 3, …</param>
/// <param name="Act">What was done.</param>
/// <param name="Finding">What it says from then on; of a withdrawal what it said last.</param>
/// <param name="Reason">Why; null where an addition gave none.</param>
/// <param name="By">Who.</param>
/// <param name="At">When.</param>
public sealed record FindingChange(string Id, int Version, FindingAct Act, Finding Finding, string? Reason, string By, DateTimeOffset At);
