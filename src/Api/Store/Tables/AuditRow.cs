using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Toepan.Api.Store.Tables;

/// <summary>
/// One thing somebody did. Number and hashes are given by the database (Store/Sql/audit.sql): each row's hash covers its own values and
/// the hash of the row before, so that a row changed or taken out is found by <see cref="AuditTrail.FirstBroken"/>.
/// </summary>
public sealed class AuditRow : IEntityTypeConfiguration<AuditRow>, IAppendOnly
{
    /// <summary>1, 2, 3 … without gaps.</summary>
    public long Sequence { get; set; }
    public DateTimeOffset At { get; set; }

    /// <summary>Account or token name.</summary>
    public string Who { get; set; } = "";

    /// <summary>What was done, one word or two: <c>upload</c>, <c>flag</c>, <c>sign</c> …</summary>
    public string Action { get; set; } = "";

    /// <summary>What it was done to: kind and key, e.g. <c>test/FO-0042</c>.</summary>
    public string Entity { get; set; } = "";

    /// <summary>JSON of what was, or null.</summary>
    public string? Before { get; set; }

    /// <summary>JSON of what is, or null.</summary>
    public string? After { get; set; }
    public byte[] PreviousHash { get; set; } = [];
    public byte[] Hash { get; set; } = [];

    public void Configure(EntityTypeBuilder<AuditRow> builder)
    {
        builder.ToTable("audit", Schemas.Lab).HasKey(row => row.Sequence);
        builder.Property(row => row.Sequence).HasDefaultValueSql("0");
        builder.Property(row => row.PreviousHash).HasDefaultValueSql("''::bytea");
        builder.Property(row => row.Hash).HasDefaultValueSql("''::bytea");
        builder.Property(row => row.Before).HasColumnType("jsonb");
        builder.Property(row => row.After).HasColumnType("jsonb");
        builder.HasIndex(row => row.Entity);
    }
}
