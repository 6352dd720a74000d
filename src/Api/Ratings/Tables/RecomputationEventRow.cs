using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Tables;

/// <summary>What happened to a recomputation.</summary>
public enum RecomputationEvent
{
    Stopped,
    Resumed,
    Finished,
}

/// <summary>Stopped, resumed or finished; the row with the highest number stands.</summary>
public sealed class RecomputationEventRow : IEntityTypeConfiguration<RecomputationEventRow>, IAppendOnly
{
    public long Id { get; set; }
    public long RecomputationId { get; set; }
    public RecomputationEvent Event { get; set; }
    public DateTimeOffset At { get; set; }
    public string By { get; set; } = "";

    public void Configure(EntityTypeBuilder<RecomputationEventRow> builder)
    {
        builder.ToTable("recomputation_event", Schemas.Lab).HasKey(row => row.Id);
        builder.Property(row => row.Event).HasConversion<string>();
        builder.HasOne<RecomputationRow>().WithMany().HasForeignKey(row => row.RecomputationId).OnDelete(DeleteBehavior.Restrict);
    }
}
