using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Programme.Tables;

/// <summary>A decision that the rating of an earlier vehicle holds for a later one.</summary>
public sealed class CarryOverRow : IEntityTypeConfiguration<CarryOverRow>, IAppendOnly
{
    public string VehicleKey { get; set; } = "";
    public string FromKey { get; set; } = "";
    public string Reason { get; set; } = "";
    public string Evidence { get; set; } = "";
    public string DecidedBy { get; set; } = "";
    public DateTimeOffset DecidedAt { get; set; }

    public void Configure(EntityTypeBuilder<CarryOverRow> builder)
    {
        builder.ToTable("carry_over", Schemas.Lab).HasKey(row => row.VehicleKey);
        builder.HasOne<VehicleRow>().WithMany().HasForeignKey(row => row.VehicleKey).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<VehicleRow>().WithMany().HasForeignKey(row => row.FromKey).OnDelete(DeleteBehavior.Restrict);
    }
}
