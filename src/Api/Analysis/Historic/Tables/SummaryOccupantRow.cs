using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Analysis.Historic.Tables;

/// <summary>A dummy of a run known by its summary. Append-only.</summary>
public sealed class SummaryOccupantRow : IEntityTypeConfiguration<SummaryOccupantRow>, IAppendOnly
{
    public long BatchId { get; set; }
    public int Number { get; set; }

    /// <summary>Seat position by ISO/TS 13499, from 1.</summary>
    public int Position { get; set; }
    public string? Dummy { get; set; }

    public void Configure(EntityTypeBuilder<SummaryOccupantRow> builder)
    {
        builder.ToTable("summary_occupant", Schemas.Lab).HasKey(row => new { row.BatchId, row.Number, row.Position });
        builder.HasOne<SummaryRunRow>().WithMany().HasForeignKey(row => new { row.BatchId, row.Number }).OnDelete(DeleteBehavior.Restrict);
    }
}
