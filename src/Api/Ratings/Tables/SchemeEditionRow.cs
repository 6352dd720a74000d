using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Tables;

/// <summary>
/// Which document an edition is: the row with the highest number of its key. A draft is replaced by another row; once a run has been rated with
/// the edition the database refuses a row with another document (Store/Sql/schemes.sql).
/// </summary>
public sealed class SchemeEditionRow : IEntityTypeConfiguration<SchemeEditionRow>, IAppendOnly
{
    public long Id { get; set; }
    public string Key { get; set; } = "";
    public string Sha256 { get; set; } = "";
    public DateTimeOffset At { get; set; }
    public string By { get; set; } = "";

    public void Configure(EntityTypeBuilder<SchemeEditionRow> builder)
    {
        builder.ToTable("scheme_edition", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => new { row.Key, row.Id });
        builder.HasOne<SchemeDocumentRow>().WithMany().HasForeignKey(row => row.Sha256).OnDelete(DeleteBehavior.Restrict);
    }
}
