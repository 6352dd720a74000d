using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Security.Tables;

/// <summary>A code that stands in for the second factor once; only its hash is kept.</summary>
public sealed class RecoveryCodeRow : IEntityTypeConfiguration<RecoveryCodeRow>
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid AccountId { get; set; }

    /// <summary>SHA-256 of the code, 32 bytes.</summary>
    public byte[] Hash { get; set; } = [];
    public DateTimeOffset? UsedAt { get; set; }

    public void Configure(EntityTypeBuilder<RecoveryCodeRow> builder)
    {
        builder.ToTable("recovery_code", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => new { row.AccountId, row.Hash }).IsUnique();
        builder.HasOne<Account>().WithMany().HasForeignKey(row => row.AccountId);
    }
}
