using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Toepan.Api.Security.Tables;

/// <summary>A person who signs in. Its name is what the history shows.</summary>
public sealed class Account : IdentityUser<Guid>, IEntityTypeConfiguration<Account>
{
    public DateTimeOffset CreatedAt { get; set; }

    public void Configure(EntityTypeBuilder<Account> builder) => builder.Property(account => account.UserName).IsRequired();
}
