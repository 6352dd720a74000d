using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Programme.Tables;

/// <summary>One run, with the identity its current package gives it. Its state is never stored: it follows from the facts.</summary>
public sealed class TestRunRow : IEntityTypeConfiguration<TestRunRow>
{
    public string Test { get; set; } = "";
    public string VehicleKey { get; set; } = "";
    public string Procedure { get; set; } = "";
    public DateOnly Date { get; set; }
    public string? Laboratory { get; set; }
    public string? RepeatOf { get; set; }

    /// <summary>Dummies by seat, for lists.</summary>
    public string Occupants { get; set; } = "";
    public DateTimeOffset CreatedAt { get; set; }

    public VehicleRow? Vehicle { get; set; }

    public void Configure(EntityTypeBuilder<TestRunRow> builder)
    {
        builder.ToTable("test_run", Schemas.Lab).HasKey(row => row.Test);
        builder.HasIndex(row => row.RepeatOf);
        builder.Property(row => row.Occupants).HasColumnType("jsonb");
        builder.HasOne(row => row.Vehicle).WithMany().HasForeignKey(row => row.VehicleKey).OnDelete(DeleteBehavior.Restrict);
    }
}
