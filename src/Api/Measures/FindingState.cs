using Toepan.Api.Programme;
using Toepan.Domain.Packages;

namespace Toepan.Api.Measures;

/// <summary>Which finding is changed.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Version">The version last read: the number of changes it had.</param>
public sealed record FindingEdit(string Id, uint Version);

/// <summary>What is asked: a finding to keep (null for a withdrawal) and why.</summary>
internal sealed record FindingAsk(FindingDraft? Draft, string? Reason, bool Needed)
{
    public Failure? CheckReason() => Reason is null && !Needed ? null : Texts.Check("A reason", Reason, FindingDraft.LongestReason);
}

/// <summary>The findings of a run when a change is decided, and who decides.</summary>
internal sealed record FindingState(string Test, IReadOnlyList<KeptFinding> Kept, string? Reason, string By, DateTimeOffset At)
{
    public FindingChange Next(string id, int version, FindingAct act, Finding finding) => new(id, version, act, finding, Reason, By, At);

    /// <summary>The finding to be changed, or why it cannot be.</summary>
    public Failure? Find(FindingEdit edit, out KeptFinding? kept)
    {
        kept = Kept.FirstOrDefault(finding => finding.Id == edit.Id);
        return kept switch
        {
            null => Failure.NotFound($"finding of test '{Test}'", edit.Id),
            _ when kept.Version != edit.Version => Edits.ChangedMeanwhile($"finding {edit.Id}", (uint)kept.Version),
            { Standing: false } => new Failure(FailureKind.Conflict, "Finding does not count", $"Finding {edit.Id} of test '{Test}' does not count any more: {kept.Without}."),
            _ => null,
        };
    }
}
