using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Security.Tables;

/// <summary>A bearer token, a machine's or a person's; only the hash of its secret is kept.</summary>
public sealed class TokenRow : IEntityTypeConfiguration<TokenRow>
{
    public Guid Id { get; set; } = Guid.CreateVersion7();

    /// <summary>What the history shows as who, for a machine's token; a person's token acts as that person.</summary>
    public string Name { get; set; } = "";

    /// <summary>SHA-256 of the secret, 32 bytes.</summary>
    public byte[] Hash { get; set; } = [];

    /// <summary>Roles of a machine's token; empty for a person's, which has no more than its owner's at the time of use.</summary>
    public Role[] Roles { get; set; } = [];

    /// <summary>What a person's token was made for; empty for a machine's made by roles.</summary>
    public TokenScope[] Scopes { get; set; } = [];

    /// <summary>Account of the person whose token it is; null for a machine's.</summary>
    public Guid? OwnerId { get; set; }
    public DateTimeOffset CreatedAt { get; set; }
    public string CreatedBy { get; set; } = "";

    /// <summary>Refused from this time on; null = never expires.</summary>
    public DateTimeOffset? ExpiresAt { get; set; }
    public DateTimeOffset? RevokedAt { get; set; }

    /// <summary>To the minute.</summary>
    public DateTimeOffset? LastUsedAt { get; set; }

    public void Configure(EntityTypeBuilder<TokenRow> builder)
    {
        builder.ToTable("token", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => row.Hash).IsUnique();
        builder.HasIndex(row => row.Name).IsUnique().HasFilter("owner_id IS NULL");
        builder.HasIndex(row => new { row.OwnerId, row.Name }).IsUnique();
        builder.HasOne<Account>().WithMany().HasForeignKey(row => row.OwnerId).OnDelete(DeleteBehavior.Restrict);
        builder.PrimitiveCollection(row => row.Roles).ElementType().HasConversion<string>();
        builder.PrimitiveCollection(row => row.Scopes).HasDefaultValueSql("'{}'").ElementType().HasConversion<string>();
    }
}
