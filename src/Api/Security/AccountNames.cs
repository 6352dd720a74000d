using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>Names the history shows as who: no two people or machines share one, now or ever, so nobody can act under another's.</summary>
internal static class AccountNames
{
    private static readonly string[] Kept = [Viewer.Service.Name, Viewer.Public.Name, ExternalAccounts.ProviderName];

    private const string Escape = "\\";

    /// <summary>The refusal of a name that somebody or something has, or null. Without regard to case.</summary>
    public static async Task<Failure?> Refuse(ProgrammeDb db, string name, CancellationToken cancellation)
    {
        var upper = name.ToUpperInvariant();
        var taken = Kept.Contains(name, StringComparer.OrdinalIgnoreCase)
            || await db.Users.AnyAsync(account => account.NormalizedUserName == upper, cancellation)
            || await db.Set<TokenRow>().AnyAsync(row => row.OwnerId == null && EF.Functions.ILike(row.Name, Literal(name), Escape), cancellation);
        return taken ? new Failure(FailureKind.Conflict, "Name taken", $"Somebody or something is named '{name}' already.") : null;
    }

    /// <summary>The pattern that only the name itself fits.</summary>
    private static string Literal(string name) =>
        name.Replace(Escape, Escape + Escape, StringComparison.Ordinal).Replace("%", Escape + "%", StringComparison.Ordinal).Replace("_", Escape + "_", StringComparison.Ordinal);
}
