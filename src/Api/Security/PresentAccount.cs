using Microsoft.EntityFrameworkCore;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>An account as it stands now, for deciding on one request.</summary>
internal sealed record PresentAccount(string Name, string? Stamp, bool Disabled, IReadOnlyList<Role> Roles)
{
    /// <summary>One query; null where there is no such account.</summary>
    public static async Task<PresentAccount?> Find(ProgrammeDb db, Guid id, CancellationToken cancellation)
    {
        var found = await db.Users.AsNoTracking().Where(account => account.Id == id)
            .Select(account => new
            {
                account.UserName, account.SecurityStamp, account.DisabledAt,
                Roles = db.UserRoles.Where(link => link.UserId == account.Id).Join(db.Roles, link => link.RoleId, role => role.Id, (_, role) => role.Name!).ToList(),
            })
            .SingleOrDefaultAsync(cancellation);
        return found is null
            ? null
            : new(found.UserName!, found.SecurityStamp, found.DisabledAt is not null, [.. found.Roles.Select(ViewerClaims.Parse).OfType<Role>()]);
    }
}
