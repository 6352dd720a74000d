using Microsoft.AspNetCore.Http;

namespace Toepan.Api.Security;

/// <summary>What a person or a machine may do; design: words.</summary>
public enum Role
{
    Administrator,
    Manager,
    Engineer,
    Analyst,
    Reviewer,
    Communications,
}

/// <summary>
/// Who asks. Every public method of a feature service takes it first. An endpoint declares it as a parameter; a page injects
/// <see cref="IViewerAccessor"/>.
/// </summary>
/// <param name="Name">Account or token name as the history shows it.</param>
/// <param name="Roles">Roles; empty = the public.</param>
public sealed record Viewer(string Name, IReadOnlySet<Role> Roles)
{
    /// <summary>Somebody who has not signed in.</summary>
    public static Viewer Public { get; } = new("public", new HashSet<Role>());

    /// <summary>The service itself, where nobody asked: first start.</summary>
    public static Viewer Service { get; } = new("toepan", new HashSet<Role>());

    /// <summary>Key of the account or the token; null for the public and the service itself.</summary>
    public Guid? Id { get; init; }

    /// <summary>Whether a bearer token speaks, a machine's or a person's, and no session of a person.</summary>
    public bool ByToken { get; init; }

    /// <summary>Whether nobody is signed in.</summary>
    public bool Anonymous => Id is null;

    public bool Is(params ReadOnlySpan<Role> any)
    {
        foreach (var role in any)
        {
            if (Roles.Contains(role))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Lets minimal API handlers take a <see cref="Viewer"/> parameter.</summary>
    public static ValueTask<Viewer> BindAsync(HttpContext context) => ValueTask.FromResult(ViewerClaims.Read(context.User));
}
