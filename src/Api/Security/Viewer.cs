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

/// <summary>Who asks. Every public method of a feature service takes it first.</summary>
/// <param name="Name">Account or token name as the history shows it.</param>
/// <param name="Roles">Roles; empty = the public.</param>
public sealed record Viewer(string Name, IReadOnlySet<Role> Roles)
{
    /// <summary>Somebody who has not signed in.</summary>
    public static Viewer Public { get; } = new("public", new HashSet<Role>());

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
}
