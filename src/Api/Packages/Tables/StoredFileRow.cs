using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Packages.Tables;

/// <summary>The bytes of an attachment under their SHA-256, whoever attached them to what. Never changed.</summary>
public sealed class StoredFileRow : IEntityTypeConfiguration<StoredFileRow>, IAppendOnly
{
    /// <summary>Lower-case hex SHA-256 of the bytes.</summary>
    public string Sha256 { get; set; } = "";
    public long Length { get; set; }

    /// <summary>What it is by its first bytes: <see cref="Domain.Packages.FileSignature"/>.</summary>
    public string MediaType { get; set; } = "";

    /// <summary>Frames a second of a film's container, where it says so.</summary>
    public double? FramesPerSecond { get; set; }
    public DateTimeOffset StoredAt { get; set; }

    public void Configure(EntityTypeBuilder<StoredFileRow> builder) => builder.ToTable("stored_file", Schemas.Lab).HasKey(row => row.Sha256);
}

/// <summary>One stretch of a stored file's bytes, so that no row is larger than <see cref="PackageChunkRow.Size"/>.</summary>
public sealed class StoredFileChunkRow : IEntityTypeConfiguration<StoredFileChunkRow>, IAppendOnly
{
    public string FileSha256 { get; set; } = "";

    /// <summary>Number from 0.</summary>
    public int Number { get; set; }
    public byte[] Bytes { get; set; } = [];

    public void Configure(EntityTypeBuilder<StoredFileChunkRow> builder)
    {
        builder.ToTable("stored_file_chunk", Schemas.Lab).HasKey(row => new { row.FileSha256, row.Number });
        builder.HasOne<StoredFileRow>().WithMany().HasForeignKey(row => row.FileSha256).OnDelete(DeleteBehavior.Restrict);
    }
}
