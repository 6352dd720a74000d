using Microsoft.AspNetCore.Identity;
using Toepan.Api.Security.Tables;

namespace Toepan.Api.Security;

/// <summary>What people do with their own account, they do signed in: a token, their own too, changes nothing of it.</summary>
internal static class OwnAccount
{
    public static Failure Refusal { get; } = new(FailureKind.Forbidden, "Not allowed", "Only a person who has signed in, and no token, does this.");

    public static async Task<Account?> Find(UserManager<Account> users, Viewer viewer) =>
        viewer is { ByToken: false, Id: { } id } ? await users.FindByIdAsync(id.ToString()) : null;
}
