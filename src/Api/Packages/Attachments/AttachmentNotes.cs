using Toepan.Api.Packages.Tables;

namespace Toepan.Api.Packages.Attachments;

/// <summary>The next row of what is said of an attachment: everything as it was but what the act changes.</summary>
internal static class AttachmentNotes
{
    public static AttachmentNoteRow First(AttachmentFacts facts, string by, DateTimeOffset at) =>
        Row(new() { Version = 1, Act = AttachmentAct.Attached, By = by, At = at }, facts);

    public static AttachmentNoteRow Next(
        KeptAttachment kept, AttachmentAct act, string? reason, string by, DateTimeOffset at, AttachmentFacts? facts = null, string? alternativeText = null) => Row(
        new()
        {
            AttachmentId = kept.Id, Version = kept.Version + 1, Act = act, Reason = reason?.Trim(), By = by, At = at,
            Withdrawn = act switch { AttachmentAct.Withdrawn => true, AttachmentAct.Restored => false, _ => kept.Withdrawn },
            AlternativeText = act switch
            {
                AttachmentAct.MarkedForSheet => alternativeText!.Trim(),
                AttachmentAct.TakenOffSheet or AttachmentAct.Withdrawn => null,
                _ => kept.AlternativeText,
            },
        },
        facts ?? kept.Facts);

    private static AttachmentNoteRow Row(AttachmentNoteRow row, AttachmentFacts facts)
    {
        (row.Kind, row.Caption, row.Camera) = (facts.Kind ?? AttachmentKind.Other, Blank(facts.Caption), Blank(facts.Camera));
        (row.TakenAt, row.Moment) = (facts.TakenAt?.ToUniversalTime(), facts.Moment);
        return row;
    }

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
