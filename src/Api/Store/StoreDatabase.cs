using Npgsql;

namespace Toepan.Api.Store;

/// <summary>Creates the database where the server has none of that name.</summary>
internal sealed class StoreDatabase(string owner)
{
    private const string MaintenanceDatabase = "postgres";

    public async Task Ensure(CancellationToken cancellation)
    {
        try
        {
            await using var connection = new NpgsqlConnection(Unpooled(null));
            await connection.OpenAsync(cancellation);
        }
        catch (PostgresException missing) when (missing.SqlState == PostgresErrorCodes.InvalidCatalogName)
        {
            await Create(cancellation);
        }
    }

    private async Task Create(CancellationToken cancellation)
    {
        var name = GrantStatements.Quote(new NpgsqlConnectionStringBuilder(owner).Database!);
        try
        {
            await using var connection = new NpgsqlConnection(Unpooled(MaintenanceDatabase));
            await connection.OpenAsync(cancellation);
            await using var command = new NpgsqlCommand($"CREATE DATABASE {name} ENCODING 'UTF8' TEMPLATE template0", connection);
            await command.ExecuteNonQueryAsync(cancellation);
        }
        catch (PostgresException raced) when (raced.SqlState is PostgresErrorCodes.DuplicateDatabase or PostgresErrorCodes.UniqueViolation)
        {
            // Another node created it between the two calls; it is there, which is all that is wanted.
            return;
        }
        catch (PostgresException refusal) when (refusal.SqlState == PostgresErrorCodes.InsufficientPrivilege)
        {
            throw new StartupRefusedException(StoreAdvice.Database(owner), refusal);
        }
    }

    private string Unpooled(string? database)
    {
        var builder = new NpgsqlConnectionStringBuilder(owner) { Pooling = false };
        builder.Database = database ?? builder.Database;
        return builder.ConnectionString;
    }
}
