using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;
using Toepan.Domain.Programme.Equipment;

namespace Toepan.Api.Programme.Tables;

/// <summary>A piece of equipment.</summary>
public sealed class EquipmentRow : IEntityTypeConfiguration<EquipmentRow>
{
    public long Id { get; set; }
    public EquipmentKind Kind { get; set; }
    public string Serial { get; set; } = "";
    public string Title { get; set; } = "";
    public string? Range { get; set; }
    public string? Note { get; set; }

    /// <summary>Out of use since, or null.</summary>
    public DateOnly? RetiredOn { get; set; }
    public DateTimeOffset CreatedAt { get; set; }
    public uint Version { get; set; }

    public List<CalibrationRow> Calibrations { get; } = [];

    public void Configure(EntityTypeBuilder<EquipmentRow> builder)
    {
        builder.ToTable("equipment", Schemas.Lab).HasKey(row => row.Id);
        builder.Property(row => row.Kind).HasConversion<string>();
        builder.Property(row => row.Version).IsRowVersion();
        builder.HasIndex(row => new { row.Kind, row.Serial }).IsUnique();
    }
}
