using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Analysis.Historic.Tables;

/// <summary>One file of historic results that was taken in, or as much of it as was new. Append-only.</summary>
public sealed class ResultBatchRow : IEntityTypeConfiguration<ResultBatchRow>, IAppendOnly
{
    public long Id { get; set; }

    /// <summary>Lower-case hex SHA-256 of the file's bytes.</summary>
    public string Sha256 { get; set; } = "";
    public DateTimeOffset At { get; set; }
    public string By { get; set; } = "";

    /// <summary>Tests it brought.</summary>
    public int Tests { get; set; }

    /// <summary>Values it brought.</summary>
    public int Values { get; set; }

    /// <summary>Measure codes it brought values of.</summary>
    public string[] Codes { get; set; } = [];

    /// <summary>The batch it took the place of, or null.</summary>
    public long? Replaces { get; set; }

    /// <summary>Why it took that place, or null.</summary>
    public string? Reason { get; set; }

    public void Configure(EntityTypeBuilder<ResultBatchRow> builder)
    {
        builder.ToTable("result_batch", Schemas.Lab).HasKey(row => row.Id);
        builder.HasOne<ResultBatchRow>().WithMany().HasForeignKey(row => row.Replaces).OnDelete(DeleteBehavior.Restrict);
    }
}
