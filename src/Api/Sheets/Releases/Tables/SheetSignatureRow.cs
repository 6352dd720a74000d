using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Sheets.Releases.Tables;

/// <summary>A reviewer's signature under one document. Whether it stands follows from the document of the day.</summary>
public sealed class SheetSignatureRow : IEntityTypeConfiguration<SheetSignatureRow>, IAppendOnly
{
    public long Id { get; set; }
    public string VehicleKey { get; set; } = "";
    public string Sha256 { get; set; } = "";
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public void Configure(EntityTypeBuilder<SheetSignatureRow> builder)
    {
        builder.ToTable("sheet_signature", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => row.VehicleKey);
        builder.HasOne<VehicleRow>().WithMany().HasForeignKey(row => row.VehicleKey).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<FrozenDocumentRow>().WithMany().HasForeignKey(row => row.Sha256).OnDelete(DeleteBehavior.Restrict);
    }
}
