using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Security.Tables;

/// <summary>The key an account's one-time codes are made with.</summary>
public sealed class SecondFactorRow : IEntityTypeConfiguration<SecondFactorRow>
{
    public Guid AccountId { get; set; }

    /// <summary>The key, encrypted by data protection.</summary>
    public string ProtectedKey { get; set; } = "";

    /// <summary>Null while the person has not shown that the app makes the right codes.</summary>
    public DateTimeOffset? ConfirmedAt { get; set; }

    /// <summary>Time step of the last code taken; none of it or before is taken again.</summary>
    public long LastStep { get; set; }

    public void Configure(EntityTypeBuilder<SecondFactorRow> builder)
    {
        builder.ToTable("second_factor", Schemas.Lab).HasKey(row => row.AccountId);
        builder.HasOne<Account>().WithOne().HasForeignKey<SecondFactorRow>(row => row.AccountId);
    }
}
