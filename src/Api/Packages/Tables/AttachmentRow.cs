using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Packages.Attachments;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Packages.Tables;

/// <summary>A file attached to a run or to a specimen. What is said of it stands in <see cref="AttachmentNoteRow"/>. Append-only.</summary>
public sealed class AttachmentRow : IEntityTypeConfiguration<AttachmentRow>, IAppendOnly
{
    public long Id { get; set; }

    /// <summary>Code of the run, made or planned; null where it belongs to a specimen.</summary>
    public string? Test { get; set; }
    public long? SpecimenId { get; set; }
    public string FileSha256 { get; set; } = "";

    /// <summary>Name it came with, without folders.</summary>
    public string Name { get; set; } = "";

    /// <summary>Entry name in the package that brought it; null where it was attached afterwards.</summary>
    public string? PackagePath { get; set; }

    public StoredFileRow? File { get; set; }
    public List<AttachmentNoteRow> Notes { get; set; } = [];

    public void Configure(EntityTypeBuilder<AttachmentRow> builder)
    {
        builder.ToTable("attachment", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => new { row.Test, row.FileSha256 });
        builder.HasIndex(row => row.SpecimenId);
        builder.HasOne(row => row.File).WithMany().HasForeignKey(row => row.FileSha256).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<SpecimenRow>().WithMany().HasForeignKey(row => row.SpecimenId).OnDelete(DeleteBehavior.Restrict);
    }
}

/// <summary>All that is said of an attachment from one moment on: the row with the highest version counts. Append-only.</summary>
public sealed class AttachmentNoteRow : IEntityTypeConfiguration<AttachmentNoteRow>, IAppendOnly
{
    public long AttachmentId { get; set; }

    /// <summary>1 when it was attached, then 2, 3, …</summary>
    public int Version { get; set; }
    public AttachmentAct Act { get; set; }
    public AttachmentKind Kind { get; set; }
    public string? Caption { get; set; }
    public string? Camera { get; set; }
    public DateTimeOffset? TakenAt { get; set; }
    public CrashMoment? Moment { get; set; }

    /// <summary>Words for who cannot see it; set exactly where it may be copied to the sheet.</summary>
    public string? AlternativeText { get; set; }
    public bool Withdrawn { get; set; }
    public string? Reason { get; set; }
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public void Configure(EntityTypeBuilder<AttachmentNoteRow> builder)
    {
        builder.ToTable("attachment_note", Schemas.Lab).HasKey(row => new { row.AttachmentId, row.Version });
        builder.HasOne<AttachmentRow>().WithMany(row => row.Notes).HasForeignKey(row => row.AttachmentId).OnDelete(DeleteBehavior.Restrict);
        builder.Property(row => row.Act).HasConversion<string>();
        builder.Property(row => row.Kind).HasConversion<string>();
        builder.Property(row => row.Moment).HasConversion<string>();
    }
}

/// <summary>Frame rate and time zero of a film as somebody set them on the page: the row with the highest version counts. Append-only.</summary>
public sealed class FilmTimingRow : IEntityTypeConfiguration<FilmTimingRow>, IAppendOnly
{
    public long AttachmentId { get; set; }
    public int Version { get; set; }
    public double FramesPerSecond { get; set; }
    public double TimeZeroFrame { get; set; }
    public double? PlaybackFramesPerSecond { get; set; }
    public string? Reason { get; set; }
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public void Configure(EntityTypeBuilder<FilmTimingRow> builder)
    {
        builder.ToTable("film_timing", Schemas.Lab).HasKey(row => new { row.AttachmentId, row.Version });
        builder.HasOne<AttachmentRow>().WithMany().HasForeignKey(row => row.AttachmentId).OnDelete(DeleteBehavior.Restrict);
    }
}
