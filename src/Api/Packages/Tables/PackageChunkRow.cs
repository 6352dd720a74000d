using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Packages.Tables;

/// <summary>One stretch of a package's bytes, so that no row is larger than <see cref="Size"/>.</summary>
public sealed class PackageChunkRow : IEntityTypeConfiguration<PackageChunkRow>, IAppendOnly
{
    /// <summary>Bytes a chunk, the last one excepted.</summary>
    public const int Size = 1 << 20;

    public string PackageSha256 { get; set; } = "";

    /// <summary>Number from 0.</summary>
    public int Number { get; set; }
    public byte[] Bytes { get; set; } = [];

    public void Configure(EntityTypeBuilder<PackageChunkRow> builder)
    {
        builder.ToTable("package_chunk", Schemas.Lab).HasKey(row => new { row.PackageSha256, row.Number });
        builder.HasOne<PackageRow>().WithMany().HasForeignKey(row => row.PackageSha256).OnDelete(DeleteBehavior.Restrict);
    }
}
