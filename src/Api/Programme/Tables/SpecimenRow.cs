using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Programme.Tables;

/// <summary>The one vehicle that is crashed. Its serial is kept masked only.</summary>
public sealed class SpecimenRow : IEntityTypeConfiguration<SpecimenRow>
{
    public long Id { get; set; }
    public string VehicleKey { get; set; } = "";

    /// <summary>Code of the run it is for, made or planned; null = not assigned yet.</summary>
    public string? Test { get; set; }
    public string? MaskedSerial { get; set; }
    public DateOnly? BuiltOn { get; set; }
    public decimal? MassKg { get; set; }
    public decimal? OdometerKm { get; set; }
    public string? Options { get; set; }
    public DateOnly? PurchasedOn { get; set; }
    public string? PurchasedFrom { get; set; }
    public string? PurchaseReference { get; set; }
    public DateOnly? ReceivedOn { get; set; }
    public DateTimeOffset CreatedAt { get; set; }
    public uint Version { get; set; }

    public void Configure(EntityTypeBuilder<SpecimenRow> builder)
    {
        builder.ToTable("specimen", Schemas.Lab).HasKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.HasIndex(row => row.Test).IsUnique();
        builder.HasOne<VehicleRow>().WithMany().HasForeignKey(row => row.VehicleKey).OnDelete(DeleteBehavior.Restrict);
    }
}
