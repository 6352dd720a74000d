using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Packages.Attachments;

/// <summary>
/// What is said of attachments. Every change names the version its editor saw. Describing, withdrawing and restoring is for engineers, managers and
/// administrators; putting a photograph on the sheet for communications, managers and administrators.
/// </summary>
public sealed class AttachmentEditor(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    public const int LongestAlternativeText = 500;
    public const int LongestReason = 2_000;
    private const string Act = "change attachments";

    /// <summary>Says what it is, where, and when.</summary>
    public Task<Outcome<KeptAttachment>> Describe(Viewer viewer, long id, AttachmentFacts facts, uint version, CancellationToken cancellation = default) =>
        Change(viewer, id, version, Access.ToMeasure(viewer, Act) ?? facts.Check(), kept => kept.Withdrawn
            ? Hidden(id)
            : new Said(AttachmentAct.Described, Facts: facts with { Kind = facts.Kind ?? kept.Facts.Kind }), cancellation);

    /// <summary>Hides it. Its bytes are kept; it leaves the sheet.</summary>
    public Task<Outcome<KeptAttachment>> Withdraw(Viewer viewer, long id, string? reason, uint version, CancellationToken cancellation = default) =>
        Change(viewer, id, version, Access.ToMeasure(viewer, Act) ?? Reason(reason), kept => kept.Withdrawn
            ? Hidden(id)
            : new Said(AttachmentAct.Withdrawn, reason), cancellation);

    /// <summary>Shows a withdrawn one again.</summary>
    public Task<Outcome<KeptAttachment>> Restore(Viewer viewer, long id, string? reason, uint version, CancellationToken cancellation = default) =>
        Change(viewer, id, version, Access.ToMeasure(viewer, Act) ?? Reason(reason), kept => kept.Withdrawn
            ? new Said(AttachmentAct.Restored, reason)
            : new Failure(FailureKind.Conflict, "Attachment is shown", $"Attachment {id} is not withdrawn."), cancellation);

    /// <summary>Marks a photograph for the sheet with words for who cannot see it, or takes it off.</summary>
    /// <param name="alternativeText">What it shows; null or empty takes it off.</param>
    public Task<Outcome<KeptAttachment>> MarkForSheet(
        Viewer viewer, long id, string? alternativeText, uint version, CancellationToken cancellation = default)
    {
        var off = string.IsNullOrWhiteSpace(alternativeText);
        var allowed = viewer.Is(Role.Communications, Role.Manager, Role.Administrator) ? null : Failure.Forbidden("choose photographs for the sheet");
        return Change(viewer, id, version, allowed ?? (off ? null : Texts.Check("The alternative text", alternativeText, LongestAlternativeText)), kept => kept switch
        {
            { Withdrawn: true } => Hidden(id),
            { IsPicture: false } => Failure.BadRequest(kept.IsFilm
                ? "A film is not given to the public: what its container may carry along (place, device, people's names) is not taken out here."
                : "Only a JPEG, PNG or WebP picture can be put on the sheet."),
            _ => new Said(off ? AttachmentAct.TakenOffSheet : AttachmentAct.MarkedForSheet, AlternativeText: alternativeText),
        }, cancellation);
    }

    private async Task<Outcome<KeptAttachment>> Change(
        Viewer viewer, long id, uint version, Failure? invalid, Func<KeptAttachment, Outcome<Said>> decide, CancellationToken cancellation)
    {
        if (invalid is not null)
        {
            return invalid;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await AttachmentLock.Begin(context, id, cancellation);
        if (await AttachmentIndex.Find(context, id, cancellation) is not { } kept)
        {
            return AttachmentService.Unknown(id);
        }

        if (kept.Version != version)
        {
            return Edits.ChangedMeanwhile($"attachment {id}", (uint)kept.Version);
        }

        if (decide(kept) is var decided && decided.Value is not { } said)
        {
            return decided.Failure!;
        }

        context.Add(AttachmentNotes.Next(kept, said.Act, said.Reason, viewer.Name, time.GetUtcNow(), said.Facts, said.AlternativeText));
        await context.SaveChangesAsync(cancellation);
        var after = (await AttachmentIndex.Find(context, id, cancellation))!;
        await audit.Append(context, viewer, new("change attachment", $"{after.Subject.Key}/attachment/{id}", Said.Of(kept), Said.Of(after)), cancellation);
        await transaction.CommitAsync(cancellation);
        return after;
    }

    private static Failure? Reason(string? reason) => Texts.Check("A reason", reason, LongestReason);

    private static Failure Hidden(long id) => new(FailureKind.Conflict, "Attachment is withdrawn", $"Attachment {id} is withdrawn; restore it first.");

    private sealed record Said(AttachmentAct Act, string? Reason = null, AttachmentFacts? Facts = null, string? AlternativeText = null)
    {
        public static object Of(KeptAttachment kept) =>
            new { kept.Facts, kept.AlternativeText, kept.Withdrawn, kept.Version, reason = kept.Acts[^1].Reason };
    }
}
