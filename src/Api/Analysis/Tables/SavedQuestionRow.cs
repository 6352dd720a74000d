using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Analysis.Tables;

/// <summary>An address of an analysis page kept under a name, for everybody in the laboratory.</summary>
public sealed class SavedQuestionRow : IEntityTypeConfiguration<SavedQuestionRow>
{
    public long Id { get; set; }
    public string Name { get; set; } = "";

    /// <summary>Path and query, from the first slash.</summary>
    public string Address { get; set; } = "";
    public string SavedBy { get; set; } = "";
    public DateTimeOffset SavedAt { get; set; }

    public void Configure(EntityTypeBuilder<SavedQuestionRow> builder)
    {
        builder.ToTable("saved_question", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => row.Name).IsUnique();
    }
}
