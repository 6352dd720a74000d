using System.Security.Claims;

namespace Toepan.Api.Security;

/// <summary>A <see cref="Viewer"/> as claims, and back.</summary>
public static class ViewerClaims
{
    /// <summary>Authentication type of a machine's token.</summary>
    public const string TokenScheme = "Bearer";

    /// <summary>Claim of a token that changes nothing.</summary>
    public const string ReadOnly = "toepan:read-only";

    /// <summary>Role name as stored and as the claim says it: the word in lower case.</summary>
    public static string Name(Role role) => role.ToString().ToLowerInvariant();

    public static ClaimsPrincipal Write(Guid id, string name, IEnumerable<Role> roles, string authenticationType, bool readOnly = false) => new(new ClaimsIdentity(
        [
            new(ClaimTypes.NameIdentifier, id.ToString()),
            new(ClaimTypes.Name, name),
            .. roles.Select(role => new Claim(ClaimTypes.Role, Name(role))),
            .. readOnly ? [new Claim(ReadOnly, "true")] : Array.Empty<Claim>(),
        ],
        authenticationType));

    /// <summary>The public where nobody is signed in; role claims that name no role are left out.</summary>
    public static Viewer Read(ClaimsPrincipal principal)
    {
        if (principal.Identity is not { IsAuthenticated: true, Name: { } name })
        {
            return Viewer.Public;
        }

        var id = Guid.TryParse(principal.FindFirstValue(ClaimTypes.NameIdentifier), out var key) ? key : (Guid?)null;
        return new Viewer(name, principal.FindAll(ClaimTypes.Role).Select(claim => Parse(claim.Value)).OfType<Role>().ToHashSet())
        {
            Id = id, ByToken = principal.Identity.AuthenticationType == TokenScheme,
        };
    }

    /// <summary>The role of that name, or null.</summary>
    public static Role? Parse(string name)
    {
        foreach (var role in Enum.GetValues<Role>())
        {
            if (string.Equals(Name(role), name, StringComparison.Ordinal))
            {
                return role;
            }
        }

        return null;
    }
}
