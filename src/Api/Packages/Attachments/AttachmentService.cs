using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Packages.Attachments;

/// <summary>Photographs, films and documents of runs and specimens: read by every role, attached by engineers, managers and administrators.</summary>
public sealed class AttachmentService(
    IDbContextFactory<ProgrammeDb> contexts, UploadSpool spool, IOptions<AttachmentSettings> settings, AuditTrail audit, TimeProvider time)
{
    public const int LongestName = 200;

    // A large file of somebody else's may be on its way into the same place.
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);

    public long MaxBytes => settings.Value.MaxBytes;

    /// <summary>Attachments of a run or specimen in the order they came.</summary>
    /// <param name="withdrawn">Withdrawn ones too.</param>
    public async Task<Outcome<IReadOnlyList<KeptAttachment>>> List(
        Viewer viewer, AttachmentSubject subject, bool withdrawn = false, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await AttachmentIndex.Unknown(context, subject, cancellation) is { } unknown)
        {
            return unknown;
        }

        var all = await AttachmentIndex.Of(context, subject, cancellation);
        return Outcome.List<KeptAttachment>([.. all.Where(attachment => withdrawn || !attachment.Withdrawn)]);
    }

    public async Task<Outcome<KeptAttachment>> Get(Viewer viewer, long id, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await AttachmentIndex.Find(context, id, cancellation) is { } found ? found : Unknown(id);
    }

    /// <summary>
    /// Attaches a file: wholly or not at all. The same bytes again are the same attachment; one that was withdrawn comes back.
    /// </summary>
    /// <param name="content">The bytes; read once, forward only.</param>
    public async Task<Outcome<AttachResult>> Attach(
        Viewer viewer, AttachmentSubject subject, Stream content, string? name, AttachmentFacts facts, CancellationToken cancellation = default)
    {
        if ((Access.ToMeasure(viewer, "attach files") ?? facts.Check()) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await AttachmentIndex.Unknown(context, subject, cancellation) is { } unknown)
        {
            return unknown;
        }

        await using var upload = await spool.Receive(content, MaxBytes, cancellation);
        return upload is null ? TooLarge() : upload.File.Length == 0 ? Failure.BadRequest("The file is empty.")
            : await Keep(context, viewer, new(subject, upload, FileName(name), facts), cancellation);
    }

    /// <summary>What to say of a body longer than the limit.</summary>
    public Failure TooLarge() => new(FailureKind.TooLarge, "File too large", $"An attachment has at most {MaxBytes} bytes.");

    private async Task<Outcome<AttachResult>> Keep(ProgrammeDb context, Viewer viewer, Incoming incoming, CancellationToken cancellation)
    {
        context.Database.SetCommandTimeout(Patience);
        var (subject, upload, file, at) = (incoming.Subject, incoming.Upload, FileToStore.Of(incoming.Upload.File, incoming.Upload.Sha256), time.GetUtcNow());
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await StoredFiles.Write(context, file, () => new Unowned(upload.File), at, cancellation);
        await AttachmentLock.Take(context, subject, cancellation);
        var same = (await AttachmentIndex.Of(context, subject, cancellation)).FirstOrDefault(attachment => attachment.Sha256 == upload.Sha256);
        if (same is { Withdrawn: false })
        {
            return new AttachResult(same, false);
        }

        var id = same is null ? await Add(context, incoming, file, viewer, at, cancellation) : await BringBack(context, same, viewer, at, cancellation);
        var kept = (await AttachmentIndex.Find(context, id, cancellation))!;
        var note = new AuditNote(
            same is null ? "attach" : "restore attachment", $"{subject.Key}/attachment/{id}", null, new { kept.Name, kept.MediaType, kept.Length, kept.Sha256, kept.Facts });
        await audit.Append(context, viewer, note, cancellation);
        await transaction.CommitAsync(cancellation);
        return new AttachResult(kept, same is null);
    }

    private static async Task<long> Add(ProgrammeDb context, Incoming incoming, FileToStore file, Viewer viewer, DateTimeOffset at, CancellationToken cancellation)
    {
        var facts = incoming.Facts with { Kind = incoming.Facts.Kind ?? AttachmentFacts.KindOf(file.MediaType) };
        var row = new AttachmentRow
        {
            Test = incoming.Subject.Test, SpecimenId = incoming.Subject.Specimen, FileSha256 = file.Sha256, Name = incoming.Name,
            Notes = [AttachmentNotes.First(facts, viewer.Name, at)],
        };
        context.Add(row);
        await context.SaveChangesAsync(cancellation);
        return row.Id;
    }

    private static async Task<long> BringBack(ProgrammeDb context, KeptAttachment same, Viewer viewer, DateTimeOffset at, CancellationToken cancellation)
    {
        context.Add(AttachmentNotes.Next(same, AttachmentAct.Restored, "Uploaded again", viewer.Name, at));
        await context.SaveChangesAsync(cancellation);
        return same.Id;
    }

    internal static Failure Unknown(long id) => Failure.NotFound("attachment", $"{id}");

    // The last part of what the sender calls it, without what no file name holds.
    private static string FileName(string? name)
    {
        var last = (name ?? "").Split('/', '\\')[^1];
        var clean = StoredText.Clean(new string([.. last.Where(character => !char.IsControl(character))])).Trim();
        return clean.Length == 0 ? "file" : clean.Length > LongestName ? clean[^LongestName..] : clean;
    }

    private sealed record Incoming(AttachmentSubject Subject, SpooledUpload Upload, string Name, AttachmentFacts Facts);
}
