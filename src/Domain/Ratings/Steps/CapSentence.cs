using Toepan.Domain.Packages;

namespace Toepan.Domain.Ratings.Steps;

/// <summary>What a cap is, and what it did.</summary>
internal static class CapSentence
{
    /// <param name="found">Findings of its kind that concern what it holds, of any severity.</param>
    /// <param name="what">What it holds.</param>
    /// <param name="before">The level before it.</param>
    public static string Text(CapRule cap, IReadOnlyList<Finding> found, string what, ProtectionLevel? before, bool fired, bool changed)
    {
        if (!fired)
        {
            return found.Count == 0
                ? $"It was not found that {cap.Words}; from {Word(cap.Severity)} on, that would hold the {what} to {cap.AtBest.Protection()} at best."
                : $"It was found that {cap.Words}, but not as {Word(cap.Severity)}, from which on it would hold the {what} to {cap.AtBest.Protection()} at best.";
        }

        var rule = $"It was found that {cap.Words} ({Word(found.Max(finding => finding.Severity))}; {cap.Source}): that holds the {what} to {cap.AtBest.Protection()} at best";
        return (before, changed) switch
        {
            (null, _) => $"{rule}; the {what} is not rated.",
            ({ } level, true) => $"{rule}; it would otherwise be {level.Protection()}.",
            _ => $"{rule}, which changes nothing.",
        };
    }

    private static string Word(FindingSeverity severity) => severity switch
    {
        FindingSeverity.Note => "a note",
        FindingSeverity.Concern => "a concern",
        _ => "a severe finding",
    };
}
