using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Sheets.Releases.Tables;

/// <summary>The manager's approval of one document, with what the manufacturer had answered by then.</summary>
public sealed class SheetApprovalRow : IEntityTypeConfiguration<SheetApprovalRow>, IAppendOnly
{
    public long Id { get; set; }
    public string VehicleKey { get; set; } = "";
    public string Sha256 { get; set; } = "";
    public long? ReplyId { get; set; }

    /// <summary>Why a correction did not wait for the end of the reply period; null where it did.</summary>
    public string? EarlyReason { get; set; }
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public void Configure(EntityTypeBuilder<SheetApprovalRow> builder)
    {
        builder.ToTable("sheet_approval", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => row.VehicleKey);
        builder.HasOne<VehicleRow>().WithMany().HasForeignKey(row => row.VehicleKey).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<FrozenDocumentRow>().WithMany().HasForeignKey(row => row.Sha256).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<ManufacturerReplyRow>().WithMany().HasForeignKey(row => row.ReplyId).OnDelete(DeleteBehavior.Restrict);
    }
}
