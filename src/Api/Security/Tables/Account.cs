using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Toepan.Api.Security.Tables;

/// <summary>A person who signs in. Its name is what the history shows, so an account is disabled and never taken out.</summary>
public sealed class Account : IdentityUser<Guid>, IEntityTypeConfiguration<Account>
{
    public DateTimeOffset CreatedAt { get; set; }

    /// <summary>Refused since; null = may sign in.</summary>
    public DateTimeOffset? DisabledAt { get; set; }
    public string? DisabledBy { get; set; }
    public DateTimeOffset? LastSignInAt { get; set; }

    public void Configure(EntityTypeBuilder<Account> builder) => builder.Property(account => account.UserName).IsRequired();
}
