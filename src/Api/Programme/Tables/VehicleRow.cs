using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Programme.Tables;

/// <summary>A vehicle: a model in one class.</summary>
public sealed class VehicleRow : IEntityTypeConfiguration<VehicleRow>
{
    public string Key { get; set; } = "";
    public string ClassKey { get; set; } = "";
    public string? Make { get; set; }
    public string? Model { get; set; }
    public int? ModelYearFrom { get; set; }
    public int? ModelYearTo { get; set; }
    public decimal? KerbMassKg { get; set; }
    public DateTimeOffset CreatedAt { get; set; }

    public VehicleClassRow? Class { get; set; }

    public void Configure(EntityTypeBuilder<VehicleRow> builder)
    {
        builder.ToTable("vehicle", Schemas.Lab).HasKey(row => row.Key);
        builder.HasOne(row => row.Class).WithMany().HasForeignKey(row => row.ClassKey).OnDelete(DeleteBehavior.Restrict);
    }
}
