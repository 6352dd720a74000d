using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Tables;

/// <summary>That an edition became the one that rates new uploads; the row with the highest number stands. Signed, with a reason.</summary>
public sealed class SchemeAdoptionRow : IEntityTypeConfiguration<SchemeAdoptionRow>, IAppendOnly
{
    public long Id { get; set; }
    public string Key { get; set; } = "";
    public string Sha256 { get; set; } = "";
    public string Reason { get; set; } = "";
    public DateTimeOffset At { get; set; }
    public string By { get; set; } = "";

    public void Configure(EntityTypeBuilder<SchemeAdoptionRow> builder)
    {
        builder.ToTable("scheme_adoption", Schemas.Lab).HasKey(row => row.Id);
        builder.HasOne<SchemeDocumentRow>().WithMany().HasForeignKey(row => row.Sha256).OnDelete(DeleteBehavior.Restrict);
    }
}
