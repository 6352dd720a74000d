using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Tables;

/// <summary>Which rating (and so which reduction and package) of a run is current: the row with the highest number. Append-only.</summary>
public sealed class CurrentRatingRow : IEntityTypeConfiguration<CurrentRatingRow>, IAppendOnly
{
    public long Id { get; set; }
    public string Test { get; set; } = "";
    public long RatingId { get; set; }
    public DateTimeOffset At { get; set; }

    public RatingRow? Rating { get; set; }

    public void Configure(EntityTypeBuilder<CurrentRatingRow> builder)
    {
        builder.ToTable("current_rating", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => new { row.Test, row.Id });
        builder.HasOne<TestRunRow>().WithMany().HasForeignKey(row => row.Test).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(row => row.Rating).WithMany().HasForeignKey(row => row.RatingId).OnDelete(DeleteBehavior.Restrict);
    }
}
