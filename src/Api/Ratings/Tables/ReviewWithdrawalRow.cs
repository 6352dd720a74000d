using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Tables;

/// <summary>That an act of a review was taken back. Append-only.</summary>
public sealed class ReviewWithdrawalRow : IEntityTypeConfiguration<ReviewWithdrawalRow>, IAppendOnly
{
    public long ActId { get; set; }
    public string Reason { get; set; } = "";
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public void Configure(EntityTypeBuilder<ReviewWithdrawalRow> builder)
    {
        builder.ToTable("review_withdrawal", Schemas.Lab).HasKey(row => row.ActId);
        builder.Property(row => row.ActId).ValueGeneratedNever();
    }
}
