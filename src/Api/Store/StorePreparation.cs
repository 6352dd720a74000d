using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Metadata;
using Npgsql;

namespace Toepan.Api.Store;

/// <summary>
/// Brings a database to the state this build needs: database, schemas, logins, migrations, functions, grants. Everything is done by the
/// owner's login, under a lock of the server, so that several nodes may start at once; doing it again changes nothing.
/// </summary>
public sealed class StorePreparation(StoreConnections connections)
{
    private const long LockKey = 0x746F6570616E;
    private static readonly TimeSpan MigrationTimeout = TimeSpan.FromMinutes(30);

    /// <exception cref="StartupRefusedException">A right is missing, the server does not answer, or the database is of a later version.</exception>
    public async Task Run(CancellationToken cancellation = default)
    {
        try
        {
            await new StoreDatabase(connections.Owner).Ensure(cancellation);
            await using var source = NpgsqlDataSource.Create(Unpooled());
            await using var owner = await source.OpenConnectionAsync(cancellation);
            await Execute(owner, $"SELECT pg_advisory_lock({LockKey})", cancellation);
            await EnsureSchemas(owner, cancellation);
            await new StoreLogins(connections, owner).Ensure(cancellation);
            await Migrate(source, owner, cancellation);
        }
        catch (PostgresException refusal) when (refusal.SqlState == PostgresErrorCodes.InsufficientPrivilege)
        {
            throw new StartupRefusedException(StoreAdvice.Schemas(connections.Owner), refusal);
        }
        catch (NpgsqlException failure)
        {
            throw new StartupRefusedException($"PostgreSQL at {Where()} does not serve: {failure.Message}", failure);
        }
    }

    private static async Task EnsureSchemas(NpgsqlConnection owner, CancellationToken cancellation)
    {
        foreach (var schema in (string[])[Schemas.Lab, Schemas.Public, Schemas.Analysis])
        {
            await using var command = new NpgsqlCommand("SELECT EXISTS (SELECT FROM pg_namespace WHERE nspname = $1)", owner);
            command.Parameters.Add(new() { Value = schema });
            if (!(bool)(await command.ExecuteScalarAsync(cancellation))!)
            {
                await Execute(owner, $"CREATE SCHEMA {schema}", cancellation);
            }
        }
    }

    private async Task Migrate(NpgsqlDataSource source, NpgsqlConnection owner, CancellationToken cancellation)
    {
        await using var db = new ProgrammeDb(ProgrammeDbOptions.For(source));
        db.Database.SetCommandTimeout(MigrationTimeout);
        await RefuseLaterVersion(db, cancellation);
        if ((await db.Database.GetPendingMigrationsAsync(cancellation)).Any())
        {
            await AnalysisViews.Clear(owner, cancellation);
        }

        await db.Database.MigrateAsync(cancellation);
        var roles = new StoreRoles(connections.ServiceRole, connections.PublicRole, connections.AnalystRole);
        var model = db.GetService<IDesignTimeModel>().Model;
        await using var transaction = await owner.BeginTransactionAsync(cancellation);
        await Execute(owner, Script("audit"), cancellation);
        await Execute(owner, Script("releases"), cancellation);
        await Execute(owner, Script("schemes"), cancellation);
        await AnalysisViews.Ensure(owner, cancellation);
        await Execute(owner, GrantStatements.For(model, roles), cancellation);
        await transaction.CommitAsync(cancellation);
    }

    private static async Task RefuseLaterVersion(ProgrammeDb db, CancellationToken cancellation)
    {
        var applied = await db.Database.GetAppliedMigrationsAsync(cancellation);
        var unknown = applied.Except(db.Database.GetMigrations()).ToArray();
        if (unknown.Length > 0)
        {
            throw new StartupRefusedException(
                $"The database was migrated by a later version of this service ({string.Join(", ", unknown)}). Nothing was changed: start that version, or restore a backup.");
        }
    }

    private static string Script(string name)
    {
        using var stream = typeof(StorePreparation).Assembly.GetManifestResourceStream($"Toepan.Api.Store.Sql.{name}.sql")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    private static async Task Execute(NpgsqlConnection connection, string statements, CancellationToken cancellation)
    {
        await using var command = new NpgsqlCommand(statements, connection) { CommandTimeout = (int)MigrationTimeout.TotalSeconds };
        await command.ExecuteNonQueryAsync(cancellation);
    }

    private string Unpooled() => new NpgsqlConnectionStringBuilder(connections.Owner) { Pooling = false }.ConnectionString;

    private string Where()
    {
        var builder = new NpgsqlConnectionStringBuilder(connections.Owner);
        return $"{builder.Host}, database {builder.Database}";
    }
}
