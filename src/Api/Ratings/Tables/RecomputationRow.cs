using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Tables;

/// <summary>What is computed again for every run.</summary>
public enum RecomputationKind
{
    /// <summary>Ratings from stored measures, by an adopted scheme.</summary>
    Scheme,

    /// <summary>Reductions from kept packages, by a candidate method edition; nothing becomes current until it is promoted.</summary>
    Methods,
}

/// <summary>
/// Work on many runs, done in the background. What is left of it follows from its items and steps, so that it goes on after any end of the
/// service where it stood.
/// </summary>
public sealed class RecomputationRow : IEntityTypeConfiguration<RecomputationRow>, IAppendOnly
{
    public long Id { get; set; }
    public RecomputationKind Kind { get; set; }
    public string Scheme { get; set; } = "";
    public string SchemeSha256 { get; set; } = "";
    public string MethodEdition { get; set; } = "";
    public string Reason { get; set; } = "";
    public DateTimeOffset At { get; set; }
    public string By { get; set; } = "";

    public void Configure(EntityTypeBuilder<RecomputationRow> builder)
    {
        builder.ToTable("recomputation", Schemas.Lab).HasKey(row => row.Id);
        builder.Property(row => row.Kind).HasConversion<string>();
        builder.HasOne<SchemeDocumentRow>().WithMany().HasForeignKey(row => row.SchemeSha256).OnDelete(DeleteBehavior.Restrict);
    }
}
