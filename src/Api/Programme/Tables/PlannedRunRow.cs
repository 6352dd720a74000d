using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Programme.Tables;

/// <summary>A run that is to be made. It stays as the record of the plan when its package has come.</summary>
public sealed class PlannedRunRow : IEntityTypeConfiguration<PlannedRunRow>
{
    public string Test { get; set; } = "";
    public string VehicleKey { get; set; } = "";
    public string Procedure { get; set; } = "";
    public int ProcedureEdition { get; set; }
    public DateOnly PlannedDate { get; set; }
    public string? RepeatOf { get; set; }
    public DateTimeOffset PlannedAt { get; set; }
    public string PlannedBy { get; set; } = "";

    /// <summary>When preparation was signed off, and by whom.</summary>
    public DateTimeOffset? PreparedAt { get; set; }
    public string? PreparedBy { get; set; }

    /// <summary>Day of the crash, said before its package comes.</summary>
    public DateOnly? RanOn { get; set; }
    public uint Version { get; set; }

    public VehicleRow? Vehicle { get; set; }

    public void Configure(EntityTypeBuilder<PlannedRunRow> builder)
    {
        builder.ToTable("planned_run", Schemas.Lab).HasKey(row => row.Test);
        builder.Property(row => row.Version).IsRowVersion();
        builder.HasIndex(row => row.RepeatOf);
        builder.HasOne(row => row.Vehicle).WithMany().HasForeignKey(row => row.VehicleKey).OnDelete(DeleteBehavior.Restrict);
    }
}
