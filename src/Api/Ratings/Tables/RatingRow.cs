using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings.Tables;

/// <summary>A scheme applied to a reduction. Append-only.</summary>
public sealed class RatingRow : IEntityTypeConfiguration<RatingRow>, IAppendOnly
{
    public long Id { get; set; }
    public long ReductionId { get; set; }
    public string Scheme { get; set; } = "";
    public bool Valid { get; set; }
    public ProtectionLevel? Overall { get; set; }
    public string? NotRated { get; set; }
    public DateTimeOffset At { get; set; }

    /// <summary>SHA-256 of the scheme document; null of ratings made before documents were kept.</summary>
    public string? SchemeSha256 { get; set; }

    /// <summary>SHA-256 over the measures it was made from, as stored; null as above.</summary>
    public string? MeasuresSha256 { get; set; }

    /// <summary>SHA-256 over the findings it was made with; null as above.</summary>
    public string? FindingsSha256 { get; set; }

    /// <summary>The whole rating with its explanation.</summary>
    public string Document { get; set; } = "";

    public ReductionRow? Reduction { get; set; }

    public void Configure(EntityTypeBuilder<RatingRow> builder)
    {
        builder.ToTable("rating", Schemas.Lab).HasKey(row => row.Id);
        builder.HasOne(row => row.Reduction).WithMany().HasForeignKey(row => row.ReductionId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<SchemeDocumentRow>().WithMany().HasForeignKey(row => row.SchemeSha256).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(row => new { row.Scheme, row.SchemeSha256 });
        builder.Property(row => row.Overall).HasConversion<string>();
        builder.Property(row => row.Document).HasColumnType("jsonb");
    }
}
