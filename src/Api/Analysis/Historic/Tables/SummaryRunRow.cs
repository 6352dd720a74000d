using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Analysis.Historic.Tables;

/// <summary>One run known by its summary alone. It counts while its batch is not withdrawn. Append-only.</summary>
public sealed class SummaryRunRow : IEntityTypeConfiguration<SummaryRunRow>, IAppendOnly
{
    public long BatchId { get; set; }

    /// <summary>Place in its batch, from 1.</summary>
    public int Number { get; set; }
    public string Test { get; set; } = "";
    public string VehicleKey { get; set; } = "";
    public string Procedure { get; set; } = "";
    public DateOnly? Date { get; set; }
    public int? ModelYear { get; set; }
    public double? TestMassKg { get; set; }

    /// <summary>SHA-256 over its content: the same content again is no conflict.</summary>
    public string Digest { get; set; } = "";

    public void Configure(EntityTypeBuilder<SummaryRunRow> builder)
    {
        builder.ToTable("summary_run", Schemas.Lab).HasKey(row => new { row.BatchId, row.Number });
        builder.HasIndex(row => row.Test);
        builder.HasOne<ResultBatchRow>().WithMany().HasForeignKey(row => row.BatchId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<VehicleRow>().WithMany().HasForeignKey(row => row.VehicleKey).OnDelete(DeleteBehavior.Restrict);
    }
}
