using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Tables;

/// <summary>That a method edition became the one that reduces; the row with the highest number stands.</summary>
public sealed class MethodPromotionRow : IEntityTypeConfiguration<MethodPromotionRow>, IAppendOnly
{
    public long Id { get; set; }
    public string Edition { get; set; } = "";
    public long RecomputationId { get; set; }
    public string Reason { get; set; } = "";
    public DateTimeOffset At { get; set; }
    public string By { get; set; } = "";

    public void Configure(EntityTypeBuilder<MethodPromotionRow> builder)
    {
        builder.ToTable("method_promotion", Schemas.Lab).HasKey(row => row.Id);
        builder.HasOne<RecomputationRow>().WithMany().HasForeignKey(row => row.RecomputationId).OnDelete(DeleteBehavior.Restrict);
    }
}
