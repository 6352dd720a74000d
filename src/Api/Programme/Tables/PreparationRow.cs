using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Programme.Tables;

/// <summary>One preparation item as somebody recorded it; the latest of an item counts, earlier ones stay.</summary>
public sealed class PreparationRow : IEntityTypeConfiguration<PreparationRow>, IAppendOnly
{
    public long Id { get; set; }
    public string Test { get; set; } = "";
    public string Item { get; set; } = "";

    /// <summary>What was written; empty = taken back.</summary>
    public string Text { get; set; } = "";
    public string RecordedBy { get; set; } = "";
    public DateTimeOffset RecordedAt { get; set; }

    public void Configure(EntityTypeBuilder<PreparationRow> builder)
    {
        builder.ToTable("preparation", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => new { row.Test, row.Item });
    }
}
