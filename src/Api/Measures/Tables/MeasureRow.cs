using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;
using Toepan.Domain.Measures;

namespace Toepan.Api.Measures.Tables;

/// <summary>One measure of a reduction. Append-only.</summary>
public sealed class MeasureRow : IEntityTypeConfiguration<MeasureRow>, IAppendOnly
{
    public long ReductionId { get; set; }

    /// <summary>Place in the reducer's order, from 0.</summary>
    public int Ordinal { get; set; }
    public string Code { get; set; } = "";
    public int? Position { get; set; }
    public double? Value { get; set; }
    public string Unit { get; set; } = "";
    public double? FromS { get; set; }
    public double? ToS { get; set; }
    public string? Absent { get; set; }
    public double? AtLeast { get; set; }
    public double? AtMost { get; set; }
    public string? BoundsBecause { get; set; }
    public int? FilterClass { get; set; }
    public string? Detail { get; set; }
    public double? Uncertainty { get; set; }
    public string MethodEdition { get; set; } = "";
    public string[] Sources { get; set; } = [];

    /// <summary>Zero offsets removed.</summary>
    public string Bias { get; set; } = "";

    public void Configure(EntityTypeBuilder<MeasureRow> builder)
    {
        builder.ToTable("measure", Schemas.Lab).HasKey(row => new { row.ReductionId, row.Ordinal });
        builder.HasIndex(row => row.Code);
        builder.HasOne<ReductionRow>().WithMany(row => row.Measures).HasForeignKey(row => row.ReductionId).OnDelete(DeleteBehavior.Restrict);
        builder.Property(row => row.Bias).HasColumnType("jsonb");
    }

    public static MeasureRow From(int ordinal, Measure measure) => new()
    {
        Ordinal = ordinal, Code = measure.Code, Position = measure.Position, Value = measure.Value, Unit = measure.Unit,
        FromS = measure.FromS, ToS = measure.ToS, Absent = measure.Absent, AtLeast = measure.Bounds?.AtLeast,
        AtMost = measure.Bounds?.AtMost, BoundsBecause = measure.Bounds?.Because, FilterClass = measure.FilterClass,
        Detail = measure.Detail, Uncertainty = measure.Uncertainty, MethodEdition = measure.MethodEdition,
        Sources = [.. measure.Sources.Select(StoredText.Clean)], Bias = StoredJson.Write(measure.Bias),
    };

    public Measure ToMeasure() => new()
    {
        Code = Code, Position = Position, Value = Value, Unit = Unit, FromS = FromS, ToS = ToS, Absent = Absent,
        Bounds = BoundsBecause is null ? null : new MeasureBounds(AtLeast, AtMost, BoundsBecause),
        FilterClass = FilterClass, Detail = Detail, Uncertainty = Uncertainty, MethodEdition = MethodEdition,
        Sources = Sources, Bias = StoredJson.Read<BiasRemoved[]>(Bias),
    };
}
