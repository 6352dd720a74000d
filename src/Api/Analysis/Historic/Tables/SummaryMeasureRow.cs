using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Analysis.Historic.Tables;

/// <summary>
/// One value of a run known by its summary, in the catalogue's unit. The key begins with batch and code, and rows are written in that order, so that one
/// measure of a whole batch lies together. No foreign key to the run: 600 000 look-ups would check what one statement wrote. Append-only.
/// </summary>
public sealed class SummaryMeasureRow : IEntityTypeConfiguration<SummaryMeasureRow>, IAppendOnly
{
    public long BatchId { get; set; }
    public string Code { get; set; } = "";

    /// <summary>The run's place in the batch.</summary>
    public int Number { get; set; }

    /// <summary>Seat position; 0 = the vehicle.</summary>
    public int Position { get; set; }
    public double Value { get; set; }

    public void Configure(EntityTypeBuilder<SummaryMeasureRow> builder)
    {
        builder.ToTable("summary_measure", Schemas.Lab).HasKey(row => new { row.BatchId, row.Code, row.Number, row.Position });
        builder.HasIndex(row => new { row.BatchId, row.Number });
        builder.HasOne<ResultBatchRow>().WithMany().HasForeignKey(row => row.BatchId).OnDelete(DeleteBehavior.Restrict);
    }
}
