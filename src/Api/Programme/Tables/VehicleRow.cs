using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;
using Toepan.Domain.Programme;

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
    public DateOnly? BuiltFrom { get; set; }
    public DateOnly? BuiltTo { get; set; }
    public decimal? KerbMassKg { get; set; }
    public string? RestraintEquipment { get; set; }
    public decimal? SalesSharePercent { get; set; }
    public DateOnly? PlannedDate { get; set; }
    public DateTimeOffset CreatedAt { get; set; }

    /// <summary>Changes with every write of the row, so that the second of two editors is told.</summary>
    public uint Version { get; set; }

    public VehicleClassRow? Class { get; set; }

    public VehicleFacts Facts() => new()
    {
        Class = ClassKey, Make = Make, Model = Model, ModelYearFrom = ModelYearFrom, ModelYearTo = ModelYearTo, BuiltFrom = BuiltFrom,
        BuiltTo = BuiltTo, KerbMassKg = KerbMassKg, RestraintEquipment = RestraintEquipment, SalesSharePercent = SalesSharePercent,
        PlannedDate = PlannedDate,
    };

    public void Take(VehicleFacts facts) =>
        (ClassKey, Make, Model, ModelYearFrom, ModelYearTo, BuiltFrom, BuiltTo, KerbMassKg, RestraintEquipment, SalesSharePercent, PlannedDate) =
        (facts.Class, facts.Make, facts.Model, facts.ModelYearFrom, facts.ModelYearTo, facts.BuiltFrom, facts.BuiltTo, facts.KerbMassKg,
            facts.RestraintEquipment, facts.SalesSharePercent, facts.PlannedDate);

    public void Configure(EntityTypeBuilder<VehicleRow> builder)
    {
        builder.ToTable("vehicle", Schemas.Lab).HasKey(row => row.Key);
        builder.Property(row => row.Version).IsRowVersion();
        builder.HasOne(row => row.Class).WithMany().HasForeignKey(row => row.ClassKey).OnDelete(DeleteBehavior.Restrict);
    }
}
