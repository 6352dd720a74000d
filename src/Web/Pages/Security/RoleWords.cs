using Toepan.Api.Security;
using Toepan.Web.Components;

namespace Toepan.Web.Pages.Security;

/// <summary>Roles and scopes in words.</summary>
internal static class RoleWords
{
    public static IReadOnlyList<Choice> Roles { get; } = [.. Enum.GetValues<Role>().Select(role => new Choice(ViewerClaims.Name(role), $"{Name(role)}: {Does(role)}"))];

    public static string Name(Role role) => ViewerClaims.Name(role);

    public static string List(IReadOnlyList<Role> roles) => roles.Count == 0 ? "no role" : string.Join(", ", roles.Select(Name));

    public static string Scope(TokenScope scope) => scope switch
    {
        TokenScope.Read => "read: read laboratory data, change nothing",
        TokenScope.Upload => "upload: bring packages, decide about channels",
        TokenScope.Arrange => "arrange: vehicles, plans, decisions",
        TokenScope.Review => "review: review and sign",
        TokenScope.Publish => "publish: sheets and releases",
        _ => "administer: people, tokens, history",
    };

    /// <summary>Roles whose boxes were ticked.</summary>
    public static Role[] Ticked(IFormCollection form) => [.. form["roles"].Select(word => ViewerClaims.Parse(word ?? "")).OfType<Role>()];

    /// <summary>Scopes whose boxes were ticked.</summary>
    public static TokenScope[] TickedScopes(IFormCollection form) =>
        [.. Enum.GetValues<TokenScope>().Where(scope => form["scopes"].Contains(Word(scope)))];

    public static string Word(TokenScope scope) => scope.ToString().ToLowerInvariant();

    private static string Does(Role role) => role switch
    {
        Role.Administrator => "keeps people, tokens and the service, and all a manager does",
        Role.Manager => "plans, decides about repeats, arranges vehicles and classes",
        Role.Engineer => "brings packages, prepares runs, decides about channels",
        Role.Analyst => "reads and compares",
        Role.Reviewer => "reviews and signs",
        _ => "prepares sheets and their release",
    };
}
