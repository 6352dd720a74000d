using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;
using Toepan.Domain.Programme.Equipment;

namespace Toepan.Api.Programme.Tables;

/// <summary>One calibration. Append-only.</summary>
public sealed class CalibrationRow : IEntityTypeConfiguration<CalibrationRow>, IAppendOnly
{
    public long Id { get; set; }
    public long EquipmentId { get; set; }
    public DateOnly On { get; set; }
    public DateOnly DueOn { get; set; }
    public string Certificate { get; set; } = "";
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public void Configure(EntityTypeBuilder<CalibrationRow> builder)
    {
        builder.ToTable("calibration", Schemas.Lab).HasKey(row => row.Id);
        builder.HasOne<EquipmentRow>().WithMany(row => row.Calibrations).HasForeignKey(row => row.EquipmentId).OnDelete(DeleteBehavior.Restrict);
    }

    public Calibration ToCalibration() => new(On, DueOn, Certificate);
}
