using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Ratings.Tables;

/// <summary>A scheme document, byte for byte, under its SHA-256. Append-only: what once rated a run can never read otherwise.</summary>
public sealed class SchemeDocumentRow : IEntityTypeConfiguration<SchemeDocumentRow>, IAppendOnly
{
    public string Sha256 { get; set; } = "";

    /// <summary>File name as it came; its ending says JSON or YAML.</summary>
    public string File { get; set; } = "";
    public byte[] Bytes { get; set; } = [];
    public DateTimeOffset At { get; set; }
    public string By { get; set; } = "";

    public void Configure(EntityTypeBuilder<SchemeDocumentRow> builder) =>
        builder.ToTable("scheme_document", Schemas.Lab).HasKey(row => row.Sha256);
}
