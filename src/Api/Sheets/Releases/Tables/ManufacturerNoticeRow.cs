using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Sheets.Releases.Tables;

/// <summary>That the manufacturer was sent one document.</summary>
public sealed class ManufacturerNoticeRow : IEntityTypeConfiguration<ManufacturerNoticeRow>, IAppendOnly
{
    public long Id { get; set; }
    public string VehicleKey { get; set; } = "";
    public string Sha256 { get; set; } = "";
    public string Recipient { get; set; } = "";

    /// <summary>Last day of the reply period, by the holidays known when it was sent.</summary>
    public DateOnly DueOn { get; set; }
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public void Configure(EntityTypeBuilder<ManufacturerNoticeRow> builder)
    {
        builder.ToTable("manufacturer_notice", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => row.VehicleKey);
        builder.HasOne<VehicleRow>().WithMany().HasForeignKey(row => row.VehicleKey).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<FrozenDocumentRow>().WithMany().HasForeignKey(row => row.Sha256).OnDelete(DeleteBehavior.Restrict);
    }
}
