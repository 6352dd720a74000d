using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Security.Tables;

/// <summary>A link through which one person makes one account; only the hash of its secret is kept.</summary>
public sealed class InvitationRow : IEntityTypeConfiguration<InvitationRow>
{
    public Guid Id { get; set; } = Guid.CreateVersion7();

    /// <summary>SHA-256 of the secret, 32 bytes.</summary>
    public byte[] Hash { get; set; } = [];

    /// <summary>Whom it is for, in the administrator's words.</summary>
    public string Whom { get; set; } = "";
    public Role[] Roles { get; set; } = [];
    public DateTimeOffset CreatedAt { get; set; }
    public string CreatedBy { get; set; } = "";
    public DateTimeOffset ExpiresAt { get; set; }
    public DateTimeOffset? WithdrawnAt { get; set; }
    public DateTimeOffset? UsedAt { get; set; }

    /// <summary>Name of the account made through it.</summary>
    public string? UsedBy { get; set; }

    public void Configure(EntityTypeBuilder<InvitationRow> builder)
    {
        builder.ToTable("invitation", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => row.Hash).IsUnique();
        builder.PrimitiveCollection(row => row.Roles).ElementType().HasConversion<string>();
    }
}
