using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Programme.Tables;

/// <summary>What historic results made the programme know.</summary>
public enum HistoricKind
{
    VehicleClass,
    Vehicle,
    Procedure,
}

/// <summary>A class, vehicle or procedure that a batch of historic results brought: the mark it is known by. Append-only.</summary>
public sealed class HistoricOriginRow : IEntityTypeConfiguration<HistoricOriginRow>, IAppendOnly
{
    public HistoricKind Kind { get; set; }
    public string Key { get; set; } = "";

    /// <summary>Number of the batch that brought it.</summary>
    public long BatchId { get; set; }

    public void Configure(EntityTypeBuilder<HistoricOriginRow> builder)
    {
        builder.ToTable("historic_origin", Schemas.Lab).HasKey(row => new { row.Kind, row.Key });
        builder.Property(row => row.Kind).HasConversion<string>();
    }
}
