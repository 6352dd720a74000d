namespace Toepan.Api.Store;

/// <summary>Names of the three lesser logins. Roles belong to a whole server, so they carry the database's name.</summary>
public sealed record StoreRoles(string Service, string Public, string? Analyst)
{
    public static StoreRoles Of(string database) => new($"{database}_service", $"{database}_public", $"{database}_analyst");
}
