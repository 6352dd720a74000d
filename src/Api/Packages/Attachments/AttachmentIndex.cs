using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages.Attachments;

/// <summary>Which attachments a run or specimen has: those of the current package, and those attached afterwards.</summary>
internal static class AttachmentIndex
{
    /// <summary>Every attachment of a subject, withdrawn ones too, in the order they came.</summary>
    public static async Task<IReadOnlyList<KeptAttachment>> Of(ProgrammeDb context, AttachmentSubject subject, CancellationToken cancellation)
    {
        var rows = await Rows(context).Where(row => subject.Test == null ? row.SpecimenId == subject.Specimen : row.Test == subject.Test)
            .OrderBy(row => row.Id).ToListAsync(cancellation);
        var carried = subject.Test is { } test ? await Carried(context, test, cancellation) : [];
        return [.. rows.Where(row => row.PackagePath is null || carried.Contains((row.PackagePath, row.FileSha256))).Select(KeptAttachment.Of)];
    }

    /// <summary>One attachment that its subject has, or null.</summary>
    public static async Task<KeptAttachment?> Find(ProgrammeDb context, long id, CancellationToken cancellation)
    {
        if (await Rows(context).SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } row)
        {
            return null;
        }

        var there = row.PackagePath is null || (await Carried(context, row.Test!, cancellation)).Contains((row.PackagePath, row.FileSha256));
        return there ? KeptAttachment.Of(row) : null;
    }

    /// <summary>Whether there is such a run, made or planned, or such a specimen; else the refusal.</summary>
    public static async Task<Failure?> Unknown(ProgrammeDb context, AttachmentSubject subject, CancellationToken cancellation) => subject switch
    {
        { Test: { } test } => await context.Set<TestRunRow>().AnyAsync(run => run.Test == test, cancellation)
            || await context.Set<PlannedRunRow>().AnyAsync(run => run.Test == test, cancellation) ? null : Failure.NotFound("test", test),
        { Specimen: { } id } => await context.Set<SpecimenRow>().AnyAsync(row => row.Id == id, cancellation) ? null : Failure.NotFound("specimen", $"{id}"),
        _ => throw new ArgumentException("An attachment belongs to a run or a specimen.", nameof(subject)),
    };

    private static IQueryable<AttachmentRow> Rows(ProgrammeDb context) =>
        context.Set<AttachmentRow>().AsNoTracking().Include(row => row.File).Include(row => row.Notes);

    private static async Task<HashSet<(string Path, string Sha256)>> Carried(ProgrammeDb context, string test, CancellationToken cancellation)
    {
        if (await CurrentRun.Find(context, test, cancellation) is not { } current)
        {
            return [];
        }

        var stored = await context.Set<PackageRow>().Where(row => row.Sha256 == current.PackageSha256).Select(row => row.Attachments).SingleAsync(cancellation);
        return [.. StoredJson.Read<Attachment[]>(stored).Where(attachment => attachment.Sha256 is not null).Select(attachment => (attachment.Path, attachment.Sha256!))];
    }
}
