using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Programme.Tables;

/// <summary>A vehicle (the twin) that shares the rating of another by an evidence document.</summary>
public sealed class TwinRow : IEntityTypeConfiguration<TwinRow>, IAppendOnly
{
    public string VehicleKey { get; set; } = "";
    public string TwinKey { get; set; } = "";
    public string Evidence { get; set; } = "";
    public string AddedBy { get; set; } = "";
    public DateTimeOffset AddedAt { get; set; }

    public void Configure(EntityTypeBuilder<TwinRow> builder)
    {
        builder.ToTable("vehicle_twin", Schemas.Lab).HasKey(row => new { row.VehicleKey, row.TwinKey });
        builder.HasIndex(row => row.TwinKey).IsUnique();
        builder.HasOne<VehicleRow>().WithMany().HasForeignKey(row => row.VehicleKey).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<VehicleRow>().WithMany().HasForeignKey(row => row.TwinKey).OnDelete(DeleteBehavior.Restrict);
    }
}
