namespace Toepan.Api.Security;

/// <summary>What a token is made for.</summary>
public enum TokenScope
{
    /// <summary>Read laboratory data; a token with this scope alone is refused every method but GET and HEAD.</summary>
    Read,

    /// <summary>Bring packages and decide about channels.</summary>
    Upload,

    /// <summary>Arrange the programme.</summary>
    Arrange,

    /// <summary>Review and sign.</summary>
    Review,

    /// <summary>Prepare and release sheets.</summary>
    Publish,

    /// <summary>Keep people, tokens and the service.</summary>
    Administer,
}

/// <summary>Scopes as roles. A scope gives one role, and only to somebody one of whose own roles already allows what it allows.</summary>
public static class TokenScopes
{
    private static readonly Role[] Any = Enum.GetValues<Role>();

    private static readonly Dictionary<TokenScope, (Role Gives, Role[] ToAnyOf)> Map = new()
    {
        [TokenScope.Read] = (Role.Analyst, Any),
        [TokenScope.Upload] = (Role.Engineer, [Role.Engineer, Role.Manager, Role.Administrator]),
        [TokenScope.Arrange] = (Role.Manager, [Role.Manager, Role.Administrator]),
        [TokenScope.Review] = (Role.Reviewer, [Role.Reviewer]),
        [TokenScope.Publish] = (Role.Communications, [Role.Communications]),
        [TokenScope.Administer] = (Role.Administrator, [Role.Administrator]),
    };

    /// <summary>Roles the scopes give to a machine.</summary>
    public static Role[] Roles(IEnumerable<TokenScope> scopes) => [.. scopes.Select(scope => Map[scope].Gives).Distinct()];

    /// <summary>Roles the scopes give to the token of somebody with these roles; none where the owner has none.</summary>
    public static Role[] Roles(IEnumerable<TokenScope> scopes, IReadOnlyCollection<Role> owner) =>
        Roles(scopes.Where(scope => MayGive(scope, owner)));

    /// <summary>Whether somebody with these roles may make a token with the scope.</summary>
    public static bool MayGive(TokenScope scope, IReadOnlyCollection<Role> owner) => Map[scope].ToAnyOf.Any(owner.Contains);

    /// <summary>Whether a token of these scopes changes nothing.</summary>
    public static bool ReadsOnly(IReadOnlyCollection<TokenScope> scopes) => scopes.Count > 0 && scopes.All(scope => scope == TokenScope.Read);
}
