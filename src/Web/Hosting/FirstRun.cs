using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Web.Hosting;

/// <summary>
/// Fills an empty store with what it takes to sign in: the roles, one administrator, one token that uploads and reads. Does nothing where
/// there is an account.
/// </summary>
internal sealed class FirstRun(
    ProgrammeDb db, UserManager<Account> users, RoleManager<IdentityRole<Guid>> roles, AuditTrail audit, TimeProvider clock)
{
    private const string IngestTokenName = "ingest";
    private const long LockKey = 0x66697273747275;
    private static readonly Role[] IngestRoles = [Role.Engineer, Role.Analyst];

    /// <summary>True where this was the first start.</summary>
    public async Task<bool> Run(string file, string baseUrl, CancellationToken cancellation)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({LockKey})", cancellation);
        await EnsureRoles();
        var first = !await db.Users.AnyAsync(cancellation);
        if (first)
        {
            await Fill(FirstRunFile.ReadOrWrite(file, baseUrl), cancellation);
        }

        await transaction.CommitAsync(cancellation);
        return first;
    }

    private async Task EnsureRoles()
    {
        foreach (var name in Enum.GetValues<Role>().Select(ViewerClaims.Name))
        {
            if (!await roles.RoleExistsAsync(name))
            {
                Demand(await roles.CreateAsync(new IdentityRole<Guid>(name)));
            }
        }
    }

    private async Task Fill(FirstRunFile secrets, CancellationToken cancellation)
    {
        var now = clock.GetUtcNow();
        var account = new Account { UserName = secrets.Administrator.Name, CreatedAt = now };
        Demand(await users.CreateAsync(account, secrets.Administrator.Password));
        Demand(await users.AddToRoleAsync(account, ViewerClaims.Name(Role.Administrator)));
        db.Add(new TokenRow
        {
            Name = IngestTokenName, Hash = TokenSecret.Hash(secrets.IngestToken), Roles = IngestRoles, CreatedAt = now, CreatedBy = Viewer.Service.Name,
        });
        var after = new { administrator = account.UserName, token = IngestTokenName, roles = IngestRoles.Select(ViewerClaims.Name) };
        await audit.Append(db, Viewer.Service, new("first start", "service", After: after), cancellation);
    }

    private static void Demand(IdentityResult result)
    {
        if (!result.Succeeded)
        {
            throw new StartupRefusedException($"The first account could not be made: {string.Join(" ", result.Errors.Select(error => error.Description))}");
        }
    }
}
