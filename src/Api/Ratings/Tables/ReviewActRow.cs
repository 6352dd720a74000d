using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Ratings.Reviews;

namespace Toepan.Api.Ratings.Tables;

/// <summary>A signature, a sending back, an acceptance or an approval, about one rating. Append-only; see <see cref="ReviewWithdrawalRow"/>.</summary>
public sealed class ReviewActRow : IEntityTypeConfiguration<ReviewActRow>, IAppendOnly
{
    public long Id { get; set; }
    public string Test { get; set; } = "";
    public long RatingId { get; set; }
    public ReviewActKind Kind { get; set; }
    public ReviewPart? Part { get; set; }
    public string? Concern { get; set; }
    public string Note { get; set; } = "";
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public ReviewWithdrawalRow? Withdrawal { get; set; }

    public void Configure(EntityTypeBuilder<ReviewActRow> builder)
    {
        builder.ToTable("review_act", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => row.Test);
        builder.HasOne<TestRunRow>().WithMany().HasForeignKey(row => row.Test).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<RatingRow>().WithMany().HasForeignKey(row => row.RatingId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(row => row.Withdrawal).WithOne().HasForeignKey<ReviewWithdrawalRow>(row => row.ActId).OnDelete(DeleteBehavior.Restrict);
        builder.Property(row => row.Kind).HasConversion<string>();
        builder.Property(row => row.Part).HasConversion<string>();
    }

    public ReviewAct ToAct() => new(
        Id, Kind, Part, Concern, Note, By, At, Withdrawal is { } withdrawal ? new ReviewWithdrawal(withdrawal.By, withdrawal.At, withdrawal.Reason) : null);
}
