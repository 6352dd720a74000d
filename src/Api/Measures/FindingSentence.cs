using System.Globalization;
using Toepan.Api.Packages;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Measures;

/// <summary>A change of a finding in the words of the history, and as an audit entry.</summary>
internal static class FindingSentence
{
    public static RunCause Cause(FindingChange change) => new(change.By, change.At, What(change), change.Reason);

    public static AuditNote Note(string test, FindingChange change, IReadOnlyList<KeptFinding> before) => new(
        change.Act switch { FindingAct.Added => "add finding", FindingAct.Corrected => "correct finding", _ => "withdraw finding" },
        $"test/{test}/finding/{change.Id}",
        before.FirstOrDefault(kept => kept.Id == change.Id)?.Finding,
        new { finding = change.Act == FindingAct.Withdrawn ? null : change.Finding, reason = change.Reason });

    private static string What(FindingChange change)
    {
        var finding = $"{change.Finding.Kind.Replace('-', ' ')} ({change.Finding.Severity.ToString().ToLowerInvariant()}, {change.Finding.Region}{When(change.Finding)})";
        return change.Act switch
        {
            FindingAct.Added => $"Added the finding {finding}",
            FindingAct.Corrected => $"Corrected finding {change.Id} to {finding}",
            _ => $"Withdrew finding {change.Id}, {finding}",
        };
    }

    private static string When(Finding finding) => finding.TimeMs is { } ms ? string.Create(CultureInfo.InvariantCulture, $", {ms:0.###} ms") : "";
}
