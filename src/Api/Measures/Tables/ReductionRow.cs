using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Measures.Tables;

/// <summary>Everything computed from one package under one method edition and one set of flags. Append-only.</summary>
public sealed class ReductionRow : IEntityTypeConfiguration<ReductionRow>, IAppendOnly
{
    public long Id { get; set; }
    public string Test { get; set; } = "";
    public string PackageSha256 { get; set; } = "";
    public string MethodEdition { get; set; } = "";
    public string ProcedureEdition { get; set; } = "";
    public string Runtime { get; set; } = "";
    public string Commit { get; set; } = "";
    public DateTimeOffset At { get; set; }
    public string By { get; set; } = "";

    /// <summary>Upload, replacement or flag, in a sentence.</summary>
    public string What { get; set; } = "";

    /// <summary>The reason given, or null.</summary>
    public string? Why { get; set; }
    public bool Valid { get; set; }

    /// <summary>Problems of severity warning or error, the reader's and the reduction's, for lists.</summary>
    public int ProblemCount { get; set; }

    /// <summary>Channel flags it was computed under.</summary>
    public string Flags { get; set; } = "";

    /// <summary>The findings that counted then: the package's with what had been changed beside it.</summary>
    public string Findings { get; set; } = "[]";

    /// <summary>Conduct, structure, beliefs, cross-checks, head contacts and problems: the reduction without its measures.</summary>
    public string Document { get; set; } = "";

    public List<MeasureRow> Measures { get; set; } = [];

    public void Configure(EntityTypeBuilder<ReductionRow> builder)
    {
        builder.ToTable("reduction", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => row.Test);
        builder.HasOne<PackageRow>().WithMany().HasForeignKey(row => row.PackageSha256).OnDelete(DeleteBehavior.Restrict);
        builder.Property(row => row.Flags).HasColumnType("jsonb");
        builder.Property(row => row.Findings).HasColumnType("jsonb").HasDefaultValueSql("'[]'::jsonb");
        builder.Property(row => row.Document).HasColumnType("jsonb");
    }
}
