using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

using Toepan.Api.Programme.Tables;

namespace Toepan.Api.Ratings.Tables;

/// <summary>A run that a recomputation covers, fixed when it begins.</summary>
public sealed class RecomputationItemRow : IEntityTypeConfiguration<RecomputationItemRow>, IAppendOnly
{
    public long RecomputationId { get; set; }
    public string Test { get; set; } = "";

    public void Configure(EntityTypeBuilder<RecomputationItemRow> builder)
    {
        builder.ToTable("recomputation_item", Schemas.Lab).HasKey(row => new { row.RecomputationId, row.Test });
        builder.HasOne<RecomputationRow>().WithMany().HasForeignKey(row => row.RecomputationId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<TestRunRow>().WithMany().HasForeignKey(row => row.Test).OnDelete(DeleteBehavior.Restrict);
    }
}
