namespace Toepan.Domain.Programme.Equipment;

/// <summary>That what is public of a run must be looked at again.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Reason">What came up, in a sentence without a full stop.</param>
/// <param name="Since">When it came up.</param>
public sealed record CorrectionDue(string Test, string Reason, DateTimeOffset Since);

/// <summary>When a released run asks for a correction.</summary>
public static class CorrectionRules
{
    /// <summary>
    /// One for each concern that came up after the run was made public and that nobody has accepted since: what was known before was decided
    /// before. Oldest first. Computed, so it goes by itself when the concern is accepted, or when a correction released later has answered it.
    /// </summary>
    /// <param name="test">Test code.</param>
    /// <param name="open">Concerns that nobody has accepted.</param>
    /// <param name="publicSince">When what is public now was released.</param>
    public static IReadOnlyList<CorrectionDue> Of(string test, IEnumerable<RunConcern> open, DateTimeOffset publicSince) =>
    [
        .. open.Where(concern => concern.Since >= publicSince).OrderBy(concern => concern.Since).ThenBy(concern => concern.Key, StringComparer.Ordinal)
            .Select(concern => new CorrectionDue(test, concern.Text, concern.Since)),
    ];
}
