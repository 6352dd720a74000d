using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;
using Toepan.Domain.Programme.Equipment;

namespace Toepan.Api.Programme.Tables;

/// <summary>A check of a dummy's part after a test. Append-only.</summary>
public sealed class DummyCheckRow : IEntityTypeConfiguration<DummyCheckRow>, IAppendOnly
{
    public long Id { get; set; }
    public long EquipmentId { get; set; }
    public DummyPart Part { get; set; }
    public bool Passed { get; set; }
    public DateOnly On { get; set; }
    public string Note { get; set; } = "";
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public void Configure(EntityTypeBuilder<DummyCheckRow> builder)
    {
        builder.ToTable("dummy_check", Schemas.Lab).HasKey(row => row.Id);
        builder.Property(row => row.Part).HasConversion<string>();
        builder.HasOne<EquipmentRow>().WithMany().HasForeignKey(row => row.EquipmentId).OnDelete(DeleteBehavior.Restrict);
    }

    public DummyCheck ToCheck() => new(Id, EquipmentId, Part, Passed, On, At);
}
