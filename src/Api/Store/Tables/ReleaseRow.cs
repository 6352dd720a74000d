using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Toepan.Api.Store.Tables;

/// <summary>
/// A released document, frozen as it was signed. The public login sees the row from <see cref="VisibleFrom"/> until
/// <see cref="VisibleTo"/> by the database's own clock; the service may move those two and nothing else.
/// </summary>
public sealed class ReleaseRow : IEntityTypeConfiguration<ReleaseRow>, IReleased
{
    /// <summary>Random, so that gaps tell nothing.</summary>
    public string Slug { get; set; } = "";

    /// <summary>1 for the first release, one more for each correction.</summary>
    public int Version { get; set; }

    /// <summary>JSON the public page is drawn from.</summary>
    public string Document { get; set; } = "";
    public DateTimeOffset VisibleFrom { get; set; }
    public DateTimeOffset? VisibleTo { get; set; }

    public void Configure(EntityTypeBuilder<ReleaseRow> builder)
    {
        builder.ToTable("release", Schemas.Public, table => table.HasCheckConstraint("ck_release_version", "version > 0"))
            .HasKey(row => new { row.Slug, row.Version });
        builder.Property(row => row.Document).HasColumnType("jsonb");
    }
}
