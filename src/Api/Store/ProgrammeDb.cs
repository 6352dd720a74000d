using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security.Tables;

namespace Toepan.Api.Store;

/// <summary>
/// The one context of the store. Tables are described by the <c>IEntityTypeConfiguration</c> of their row types, in the feature folders.
/// Services take <c>IDbContextFactory&lt;ProgrammeDb&gt;</c> and use one context an operation.
/// </summary>
public sealed class ProgrammeDb(DbContextOptions<ProgrammeDb> options) : IdentityDbContext<Account, IdentityRole<Guid>, Guid>(options)
{
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        configurationBuilder.Properties<string>().HaveConversion<StoredTextConversion>();

    protected override void OnModelCreating(ModelBuilder builder)
    {
        builder.HasDefaultSchema(Schemas.Lab);
        base.OnModelCreating(builder);
        NameIdentityTables(builder);
        builder.ApplyConfigurationsFromAssembly(typeof(ProgrammeDb).Assembly);
    }

    private static void NameIdentityTables(ModelBuilder builder)
    {
        builder.Entity<Account>().ToTable("account");
        builder.Entity<IdentityRole<Guid>>().ToTable("role");
        builder.Entity<IdentityUserRole<Guid>>().ToTable("account_role");
        builder.Entity<IdentityUserClaim<Guid>>().ToTable("account_claim");
        builder.Entity<IdentityUserLogin<Guid>>().ToTable("account_login");
        builder.Entity<IdentityUserToken<Guid>>().ToTable("account_token");
        builder.Entity<IdentityRoleClaim<Guid>>().ToTable("role_claim");
    }
}
