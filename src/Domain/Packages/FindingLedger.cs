namespace Toepan.Domain.Packages;

/// <summary>A finding of a run as it stands, with everything done to it.</summary>
/// <param name="Id">See <see cref="FindingId"/>.</param>
/// <param name="Finding">What it says now; of a withdrawn one what it said last.</param>
/// <param name="InPackage">Whether the current package brings it, rather than the page.</param>
/// <param name="Without">Why it does not count, or null where it counts.</param>
/// <param name="Changes">What was done to it on the page, earliest first.</param>
public sealed record KeptFinding(string Id, Finding Finding, bool InPackage, string? Without, IReadOnlyList<FindingChange> Changes)
{
    public bool Standing => Without is null;

    /// <summary>Number of changes; an editor names the one last read.</summary>
    public int Version => Changes.Count;
}

/// <summary>
/// The package's findings and what people changed beside it → the findings that count. A change of a package's finding holds wherever a package of the run
/// still says the same; an addition holds until a package says it itself. Nothing is dropped: what does not count is kept with the reason.
/// </summary>
public static class FindingLedger
{
    public const string Withdrawn = "withdrawn";
    public const string SaidByPackage = "the package says it itself";
    public const string NotInPackage = "the current package no longer says what was changed here";

    /// <summary>Every finding: the package's in its order, then additions, then changes that have lost what they changed.</summary>
    /// <param name="package">Findings of the current package.</param>
    /// <param name="changes">Every change of the run, in order.</param>
    public static IReadOnlyList<KeptFinding> Of(IReadOnlyList<Finding> package, IReadOnlyList<FindingChange> changes)
    {
        var byId = changes.GroupBy(change => change.Id).ToDictionary(group => group.Key, group => group.ToList(), StringComparer.Ordinal);
        var ids = FindingId.OfPackage(package);
        var kept = new List<KeptFinding>();
        for (var i = 0; i < ids.Count; i++)
        {
            kept.Add(Changed(ids[i], package[i], byId.Remove(ids[i], out var own) ? own : []));
        }

        var said = kept.Where(finding => finding.Standing).Select(finding => Content(finding.Finding)).ToHashSet();
        kept.AddRange(byId.Where(group => group.Value[0].Act == FindingAct.Added).OrderBy(group => group.Key.Length).ThenBy(group => group.Key, StringComparer.Ordinal).Select(group => Added(group.Key, group.Value, said)));
        kept.AddRange(byId.Where(group => group.Value[0].Act != FindingAct.Added).Select(group => Lost(group.Key, group.Value)));
        return kept;
    }

    /// <summary>The findings that count, as every reader of findings sees them.</summary>
    public static IReadOnlyList<Finding> Standing(IReadOnlyList<Finding> package, IReadOnlyList<FindingChange> changes) =>
        [.. Of(package, changes).Where(finding => finding.Standing).Select(finding => finding.Finding)];

    /// <summary>What a finding says, wherever it stands in a file.</summary>
    public static Finding Content(Finding finding) => finding with { Line = 0 };

    private static KeptFinding Changed(string id, Finding written, List<FindingChange> changes) =>
        new(id, (changes.Count > 0 ? changes[^1].Finding : written) with { Line = written.Line }, true, Ends(changes) ? Withdrawn : null, changes);

    private static KeptFinding Added(string id, List<FindingChange> changes, HashSet<Finding> said)
    {
        var finding = Content(changes[^1].Finding);
        return new(id, finding, false, Ends(changes) ? Withdrawn : said.Contains(finding) ? SaidByPackage : null, changes);
    }

    private static KeptFinding Lost(string id, List<FindingChange> changes) => new(id, Content(changes[^1].Finding), false, NotInPackage, changes);

    private static bool Ends(List<FindingChange> changes) => changes is [.., { Act: FindingAct.Withdrawn }];
}
