using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Sheets.Releases.Tables;

/// <summary>
/// One version of one sheet put on its way to the public. Its copy for the public is the row of <c>pub.release</c> with the same slug and number.
/// </summary>
public sealed class ReleaseActRow : IEntityTypeConfiguration<ReleaseActRow>, IAppendOnly
{
    public Guid Id { get; set; }
    public string VehicleKey { get; set; } = "";
    public string Test { get; set; } = "";
    public string Slug { get; set; } = "";
    public int Version { get; set; }
    public Domain.Sheets.Releases.ReleaseKind Kind { get; set; }

    /// <summary>Document released; null for a withdrawal.</summary>
    public string? Sha256 { get; set; }
    public long? ApprovalId { get; set; }

    /// <summary>Why it is corrected or withdrawn; null for a first release.</summary>
    public string? Why { get; set; }
    public DateTimeOffset VisibleFrom { get; set; }

    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public void Configure(EntityTypeBuilder<ReleaseActRow> builder)
    {
        builder.ToTable("release_act", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => row.VehicleKey);
        builder.Property(row => row.Kind).HasConversion<string>();
        builder.HasOne<VehicleRow>().WithMany().HasForeignKey(row => row.VehicleKey).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<FrozenDocumentRow>().WithMany().HasForeignKey(row => row.Sha256).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<SheetApprovalRow>().WithMany().HasForeignKey(row => row.ApprovalId).OnDelete(DeleteBehavior.Restrict);
    }
}
