using System.Globalization;
using Npgsql;
using Toepan.Api.Store;
using Toepan.Web.Hosting.Cluster;

namespace Toepan.Support;

/// <summary>
/// A throw-away PostgreSQL cluster for one test run, started on first use, and a migrated database of its own for every test that asks.
/// Use as an assembly fixture.
/// </summary>
public sealed class PostgresFixture : IAsyncDisposable
{
    private const string Template = "toepan_template";

    /// <summary>Nothing here outlives the run, so nothing waits for the disk.</summary>
    private static readonly Dictionary<string, string> Fast = new()
    {
        ["fsync"] = "off", ["synchronous_commit"] = "off", ["full_page_writes"] = "off", ["max_connections"] = "300",
    };

    private readonly DirectoryInfo folder;
    private readonly Lazy<Task<PrivateCluster>> cluster;
    private int databases;

    public PostgresFixture()
    {
        folder = Directory.CreateTempSubdirectory("toepan-tests-");
        TestFolders.LetOthersThrough(folder);
        cluster = new(Start);
    }

    /// <summary>Roles are the whole cluster's, so all test databases share them.</summary>
    public static StoreRoles Roles { get; } = StoreRoles.Of("toepan");

    /// <summary>A new database, migrated and granted.</summary>
    public async Task<StoreConnections> CreateDatabase()
    {
        var name = NextName();
        await Execute($"CREATE DATABASE {name} TEMPLATE {Template} STRATEGY wal_log");
        return await Connections(name);
    }

    /// <summary>A new database with nothing in it.</summary>
    public async Task<StoreConnections> CreateEmptyDatabase()
    {
        var name = NextName();
        await Execute($"CREATE DATABASE {name} TEMPLATE template0");
        return await Connections(name);
    }

    /// <summary>Connections to a database by that name, there or not.</summary>
    public async Task<StoreConnections> Connections(string database) =>
        StoreConnections.FromOwner((await cluster.Value).ConnectionString(database), Roles);

    /// <summary>Runs a statement as the cluster's owner.</summary>
    public async Task Execute(string statement)
    {
        await using var connection = new NpgsqlConnection((await cluster.Value).ConnectionString("postgres") + ";Pooling=false");
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(statement, connection);
        await command.ExecuteNonQueryAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (cluster.IsValueCreated)
        {
            NpgsqlConnection.ClearAllPools();
            await (await cluster.Value).Stop();
        }

        folder.Delete(recursive: true);
    }

    private async Task<PrivateCluster> Start()
    {
        var made = new PrivateCluster(Path.Combine(folder.FullName, "cluster"), Fast);
        await made.Start(CancellationToken.None);
        await new StorePreparation(StoreConnections.FromOwner(made.ConnectionString(Template), Roles)).Run();
        return made;
    }

    private string NextName() => string.Create(CultureInfo.InvariantCulture, $"test_{Interlocked.Increment(ref databases)}");
}
