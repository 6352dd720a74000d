using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Programme.Tables;

/// <summary>That somebody opened a run's measures or rating, and when first.</summary>
public sealed class MeasureViewRow : IEntityTypeConfiguration<MeasureViewRow>, IAppendOnly
{
    public string Test { get; set; } = "";
    public string Who { get; set; } = "";
    public DateTimeOffset FirstAt { get; set; }

    public void Configure(EntityTypeBuilder<MeasureViewRow> builder)
    {
        builder.ToTable("measure_view", Schemas.Lab).HasKey(row => new { row.Test, row.Who });
    }
}
