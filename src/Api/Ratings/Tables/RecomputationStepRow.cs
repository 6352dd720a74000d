using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Tables;

/// <summary>What was done with one run.</summary>
public enum StepOutcome
{
    /// <summary>The new rating is current.</summary>
    Current,

    /// <summary>The run is released: the new rating is kept beside the released one, which stays.</summary>
    Released,

    /// <summary>The run had been rated so already, by an upload or a flag since.</summary>
    Already,

    /// <summary>The new reduction and rating wait for promotion.</summary>
    Candidate,

    /// <summary>It could not be computed.</summary>
    Failed,
}

/// <summary>One run of a recomputation, done. Its key keeps any run from being done twice.</summary>
public sealed class RecomputationStepRow : IEntityTypeConfiguration<RecomputationStepRow>, IAppendOnly
{
    public long RecomputationId { get; set; }
    public string Test { get; set; } = "";
    public StepOutcome Outcome { get; set; }

    /// <summary>Rating before; null where it could not be computed.</summary>
    public long? BeforeId { get; set; }

    /// <summary>Rating made; null where none was.</summary>
    public long? AfterId { get; set; }

    /// <summary>Why it failed, or null.</summary>
    public string? Note { get; set; }
    public DateTimeOffset At { get; set; }

    public RatingRow? Before { get; set; }
    public RatingRow? After { get; set; }

    public void Configure(EntityTypeBuilder<RecomputationStepRow> builder)
    {
        builder.ToTable("recomputation_step", Schemas.Lab).HasKey(row => new { row.RecomputationId, row.Test });
        builder.Property(row => row.Outcome).HasConversion<string>();
        builder.HasOne<RecomputationItemRow>().WithMany().HasForeignKey(row => new { row.RecomputationId, row.Test }).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(row => row.Before).WithMany().HasForeignKey(row => row.BeforeId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(row => row.After).WithMany().HasForeignKey(row => row.AfterId).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(row => row.Test);
    }
}
