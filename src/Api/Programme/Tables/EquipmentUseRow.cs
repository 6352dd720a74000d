using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Programme.Tables;

/// <summary>That a run used a piece of equipment, or that saying so was a mistake: the latest row of a run, piece and seat counts. Append-only.</summary>
public sealed class EquipmentUseRow : IEntityTypeConfiguration<EquipmentUseRow>, IAppendOnly
{
    public long Id { get; set; }
    public string Test { get; set; } = "";
    public long EquipmentId { get; set; }

    /// <summary>Seat position of a dummy; null for everything else.</summary>
    public int? Position { get; set; }

    /// <summary>False where an earlier row was a mistake.</summary>
    public bool Used { get; set; }
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public EquipmentRow? Equipment { get; set; }

    public void Configure(EntityTypeBuilder<EquipmentUseRow> builder)
    {
        builder.ToTable("equipment_use", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => row.Test);
        builder.HasOne<TestRunRow>().WithMany().HasForeignKey(row => row.Test).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(row => row.Equipment).WithMany().HasForeignKey(row => row.EquipmentId).OnDelete(DeleteBehavior.Restrict);
    }
}
