using System.Security.Cryptography;
using System.Text;
using Npgsql;

namespace Toepan.Api.Store;

/// <summary>The logins of the store, as connection strings.</summary>
/// <param name="Owner">Owns schemas and tables; used at start alone, to migrate and to grant.</param>
/// <param name="Service">Signed-in routes: reads and writes <c>lab</c>, cannot change append-only tables.</param>
/// <param name="Public">Public routes: reads released rows of <c>pub</c> and nothing else.</param>
/// <param name="Analyst">For notebooks and other programs of an analyst: reads the views of <c>analysis</c> and nothing else. Null where none is configured.</param>
public sealed record StoreConnections(string Owner, string Service, string Public, string? Analyst = null)
{
    private const int DerivationRounds = 200_000;
    private const int PasswordBytes = 32;

    public string ServiceRole => new NpgsqlConnectionStringBuilder(Service).Username!;

    public string PublicRole => new NpgsqlConnectionStringBuilder(Public).Username!;

    public string? AnalystRole => Analyst is null ? null : new NpgsqlConnectionStringBuilder(Analyst).Username;

    /// <summary>
    /// The owner's connection string with three logins beside it, named after the database unless <paramref name="roles"/> says otherwise.
    /// Their passwords are derived from the owner's (PBKDF2-SHA-256), so that every node knows them and none is stored.
    /// </summary>
    /// <exception cref="StartupRefusedException">The string cannot be read, names no database, or has no password to derive from.</exception>
    public static StoreConnections FromOwner(string owner, StoreRoles? roles = null)
    {
        var builder = Read(owner);
        if (string.IsNullOrEmpty(builder.Password))
        {
            throw new StartupRefusedException(
                "ConnectionStrings__Programme has no password, so the passwords of the service's and the public login cannot be derived from it. "
                + "Set ConnectionStrings__ProgrammeService and ConnectionStrings__ProgrammePublic too.");
        }

        var named = roles ?? StoreRoles.Of(builder.Database!);
        return new(
            owner, WithLogin(builder, named.Service), WithLogin(builder, named.Public), named.Analyst is { } analyst ? WithLogin(builder, analyst) : null);
    }

    /// <summary>As configured by hand: all strings given; without the analyst's there is no such login.</summary>
    public static StoreConnections FromAll(string owner, string service, string @public, string? analyst = null)
    {
        foreach (var one in new[] { owner, service, @public, analyst }.OfType<string>())
        {
            Read(one);
        }

        return new(owner, service, @public, analyst);
    }

    private static NpgsqlConnectionStringBuilder Read(string text)
    {
        try
        {
            var builder = new NpgsqlConnectionStringBuilder(text);
            return string.IsNullOrEmpty(builder.Database) || string.IsNullOrEmpty(builder.Username) || string.IsNullOrEmpty(builder.Host)
                ? throw new StartupRefusedException("A connection string must name Host, Database and Username.")
                : builder;
        }
        catch (ArgumentException problem)
        {
            throw new StartupRefusedException($"A connection string cannot be read: {problem.Message}", problem);
        }
    }

    private static string WithLogin(NpgsqlConnectionStringBuilder owner, string role)
    {
        var salt = Encoding.UTF8.GetBytes($"toepan login {role}");
        var password = Rfc2898DeriveBytes.Pbkdf2(owner.Password!, salt, DerivationRounds, HashAlgorithmName.SHA256, PasswordBytes);
        return new NpgsqlConnectionStringBuilder(owner.ConnectionString)
        {
            Username = role, Password = Convert.ToHexStringLower(password),
        }.ConnectionString;
    }
}
