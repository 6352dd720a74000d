using Npgsql;

namespace Toepan.Api.Store;

/// <summary>Makes sure that the lesser logins exist and open with their passwords.</summary>
internal sealed class StoreLogins(StoreConnections connections, NpgsqlConnection owner)
{
    public async Task Ensure(CancellationToken cancellation)
    {
        await EnsureOne(connections.Service, [], cancellation);
        await EnsureOne(
            connections.Public,
            ["SET default_transaction_read_only = on", "SET statement_timeout = '10s'"],
            cancellation);
        if (connections.Analyst is { } analyst)
        {
            await EnsureOne(
                analyst,
                ["SET default_transaction_read_only = on", "SET statement_timeout = '120s'", "SET idle_in_transaction_session_timeout = '60s'", "SET search_path = analysis"],
                cancellation);
        }
    }

    private async Task EnsureOne(string connectionString, string[] settings, CancellationToken cancellation)
    {
        var login = new NpgsqlConnectionStringBuilder(connectionString);
        if (await Exists(login.Username!, cancellation) && await Opens(connectionString, cancellation))
        {
            return;
        }

        var role = GrantStatements.Quote(login.Username!);
        var verb = await Exists(login.Username!, cancellation) ? "ALTER" : "CREATE";
        var password = (login.Password ?? "").Replace("'", "''", StringComparison.Ordinal);
        string[] statements =
        [
            $"{verb} ROLE {role} LOGIN PASSWORD '{password}' NOSUPERUSER NOCREATEDB NOCREATEROLE",
            .. settings.Select(setting => $"ALTER ROLE {role} {setting}"),
            $"GRANT CONNECT ON DATABASE {GrantStatements.Quote(login.Database!)} TO {role}",
        ];
        await Execute(string.Join(";\n", statements), cancellation);
    }

    private async Task<bool> Exists(string role, CancellationToken cancellation)
    {
        await using var command = new NpgsqlCommand("SELECT EXISTS (SELECT FROM pg_roles WHERE rolname = $1)", owner);
        command.Parameters.Add(new() { Value = role });
        return (bool)(await command.ExecuteScalarAsync(cancellation))!;
    }

    private static async Task<bool> Opens(string connectionString, CancellationToken cancellation)
    {
        var unpooled = new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false }.ConnectionString;
        await using var connection = new NpgsqlConnection(unpooled);
        try
        {
            await connection.OpenAsync(cancellation);
            return true;
        }
        catch (PostgresException refusal) when (refusal.SqlState is
            PostgresErrorCodes.InvalidPassword or PostgresErrorCodes.InvalidAuthorizationSpecification or PostgresErrorCodes.InsufficientPrivilege)
        {
            return false;
        }
    }

    private async Task Execute(string statements, CancellationToken cancellation)
    {
        try
        {
            await using var command = new NpgsqlCommand(statements, owner);
            await command.ExecuteNonQueryAsync(cancellation);
        }
        catch (PostgresException refusal) when (refusal.SqlState == PostgresErrorCodes.InsufficientPrivilege)
        {
            throw new StartupRefusedException(StoreAdvice.Logins(connections), refusal);
        }
    }
}
