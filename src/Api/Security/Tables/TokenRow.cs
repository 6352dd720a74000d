using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Security.Tables;

/// <summary>A machine's bearer token; only the hash of its secret is kept.</summary>
public sealed class TokenRow : IEntityTypeConfiguration<TokenRow>
{
    public Guid Id { get; set; } = Guid.CreateVersion7();

    /// <summary>What the history shows as who.</summary>
    public string Name { get; set; } = "";

    /// <summary>SHA-256 of the secret, 32 bytes.</summary>
    public byte[] Hash { get; set; } = [];
    public Role[] Roles { get; set; } = [];
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
        builder.HasIndex(row => row.Name).IsUnique();
        builder.PrimitiveCollection(row => row.Roles).ElementType().HasConversion<string>();
    }
}
