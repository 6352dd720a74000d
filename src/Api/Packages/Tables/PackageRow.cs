using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Packages.Tables;

/// <summary>One uploaded package under the SHA-256 of its bytes. Never changed.</summary>
public sealed class PackageRow : IEntityTypeConfiguration<PackageRow>, IAppendOnly
{
    /// <summary>Lower-case hex SHA-256 of the bytes.</summary>
    public string Sha256 { get; set; } = "";
    public string Test { get; set; } = "";
    public string ContentSha256 { get; set; } = "";
    public long Length { get; set; }
    public string? TopFolder { get; set; }

    /// <summary>programme.json as read.</summary>
    public string Programme { get; set; } = "";

    /// <summary>Lines of the test header.</summary>
    public string TestHeader { get; set; } = "";

    /// <summary>Lines of the channel index.</summary>
    public string IndexHeader { get; set; } = "[]";

    /// <summary>Rows of Movie/films.csv.</summary>
    public string Films { get; set; } = "[]";

    /// <summary>Attachments.</summary>
    public string Attachments { get; set; } = "";

    /// <summary>The reader's problems.</summary>
    public string Problems { get; set; } = "";
    public DateTimeOffset UploadedAt { get; set; }
    public string UploadedBy { get; set; } = "";

    public void Configure(EntityTypeBuilder<PackageRow> builder)
    {
        builder.ToTable("package", Schemas.Lab).HasKey(row => row.Sha256);
        builder.HasOne<TestRunRow>().WithMany().HasForeignKey(row => row.Test).OnDelete(DeleteBehavior.Restrict);
        builder.Property(row => row.Programme).HasColumnType("jsonb");
        builder.Property(row => row.TestHeader).HasColumnType("jsonb");
        builder.Property(row => row.IndexHeader).HasColumnType("jsonb").HasDefaultValueSql("'[]'::jsonb");
        builder.Property(row => row.Films).HasColumnType("jsonb").HasDefaultValueSql("'[]'::jsonb");
        builder.Property(row => row.Attachments).HasColumnType("jsonb");
        builder.Property(row => row.Problems).HasColumnType("jsonb");
    }
}
