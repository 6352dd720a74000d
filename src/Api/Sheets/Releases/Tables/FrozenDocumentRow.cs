using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Sheets.Releases.Tables;

/// <summary>A sheet document as somebody signed, sent or approved it, under its hash.</summary>
public sealed class FrozenDocumentRow : IEntityTypeConfiguration<FrozenDocumentRow>, IAppendOnly
{
    /// <summary>Hash of the document without what the release fills, lower-case hex.</summary>
    public string Sha256 { get; set; } = "";

    /// <summary>Its canonical JSON, byte for byte: text, because jsonb would write it anew.</summary>
    public string Document { get; set; } = "";
    public DateTimeOffset KeptAt { get; set; }

    public void Configure(EntityTypeBuilder<FrozenDocumentRow> builder) => builder.ToTable("frozen_document", Schemas.Lab).HasKey(row => row.Sha256);
}
