namespace Toepan.Api.Security;

/// <summary>What every token to make must be.</summary>
internal static class TokenRules
{
    private const int LongestName = 100;
    private static readonly TimeSpan LongestPersonal = TimeSpan.FromDays(366);

    public static Failure? Refuse(NewToken token, DateTimeOffset now)
    {
        if (token is { Roles: null or { Count: 0 }, Scopes: null or { Count: 0 } })
        {
            return Failure.BadRequest("A token needs at least one role, or at least one scope.");
        }

        return Name(token.Name) ?? Expiry(token.ExpiresAt, now);
    }

    public static Failure? Refuse(NewPersonalToken token, IReadOnlyCollection<Role> owner, DateTimeOffset now)
    {
        if (token.Scopes is null or { Count: 0 })
        {
            return Failure.BadRequest("A token needs at least one scope.");
        }

        var beyond = token.Scopes.Where(scope => !TokenScopes.MayGive(scope, owner)).Select(scope => scope.ToString().ToLowerInvariant()).ToArray();
        if (beyond.Length > 0)
        {
            return Failure.BadRequest($"Your roles do not allow the scope {string.Join(", ", beyond)}.");
        }

        return token.ExpiresAt is not { } end || end - now > LongestPersonal
            ? Failure.BadRequest("A personal token needs an end, at most a year ahead.")
            : Name(token.Name) ?? Expiry(end, now);
    }

    private static Failure? Name(string? name) =>
        name is null or { Length: 0 or > LongestName } ? Failure.BadRequest($"A token needs a name of 1 to {LongestName} characters.") : Texts.Check("A name", name, LongestName);

    private static Failure? Expiry(DateTimeOffset? end, DateTimeOffset now) => end <= now ? Failure.BadRequest("expiresAt is past.") : null;
}
