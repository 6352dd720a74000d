using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Analysis.Historic.Tables;

/// <summary>A batch of historic results that counts no longer, and why. Append-only.</summary>
public sealed class ResultWithdrawalRow : IEntityTypeConfiguration<ResultWithdrawalRow>, IAppendOnly
{
    public long BatchId { get; set; }
    public DateTimeOffset At { get; set; }
    public string By { get; set; } = "";
    public string Reason { get; set; } = "";

    public void Configure(EntityTypeBuilder<ResultWithdrawalRow> builder)
    {
        builder.ToTable("result_withdrawal", Schemas.Lab).HasKey(row => row.BatchId);
        builder.Property(row => row.BatchId).ValueGeneratedNever();
        builder.HasOne<ResultBatchRow>().WithOne().HasForeignKey<ResultWithdrawalRow>(row => row.BatchId).OnDelete(DeleteBehavior.Restrict);
    }
}
