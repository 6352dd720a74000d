using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql;
using Toepan.Api.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Store;

/// <summary>An empty database becomes the store; doing it again changes nothing; missing rights are named.</summary>
public sealed class StorePreparationTests(PostgresFixture postgres)
{
    /// <summary>Migrations this build carries; each is applied once.</summary>
    private static long Carried { get; } =
        typeof(ProgrammeDb).Assembly.GetTypes().Count(type => type.IsSubclassOf(typeof(Migration)));

    [Fact]
    public async Task Run_EmptyDatabase_AppliesEveryMigration()
    {
        var connections = await postgres.CreateEmptyDatabase();

        await new StorePreparation(connections).Run(TestContext.Current.CancellationToken);

        await using var source = NpgsqlDataSource.Create(connections.Owner);
        await using var db = new ProgrammeDb(ProgrammeDbOptions.For(source));
        Assert.Empty(await db.Database.GetPendingMigrationsAsync(TestContext.Current.CancellationToken));
        Assert.False(db.Database.HasPendingModelChanges(), "The tables' descriptions changed without a migration: deploy/add-migration.sh NAME");
    }

    [Fact]
    public async Task Run_NoSuchDatabase_CreatesIt()
    {
        var connections = await postgres.Connections("made_on_demand");

        await new StorePreparation(connections).Run(TestContext.Current.CancellationToken);

        Assert.Equal(Carried, await Sql.Scalar(connections.Service, "SELECT count(*) FROM lab.migration"));
    }

    [Fact]
    public async Task Run_Twice_ChangesNothing()
    {
        var connections = await postgres.CreateDatabase();
        var before = await Grants(connections);

        await new StorePreparation(connections).Run(TestContext.Current.CancellationToken);

        Assert.NotEmpty(before);
        Assert.Equal(before, await Grants(connections));
    }

    [Fact]
    public async Task Run_SeveralNodesAtOnce_AllSucceed()
    {
        var connections = await postgres.CreateEmptyDatabase();

        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => new StorePreparation(connections).Run(TestContext.Current.CancellationToken)));

        Assert.Equal(Carried, await Sql.Scalar(connections.Service, "SELECT count(*) FROM lab.migration"));
    }

    [Fact]
    public async Task Run_MigrationUnknownToThisBuild_IsRefused()
    {
        var connections = await postgres.CreateDatabase();
        await Sql.Execute(connections.Owner, "INSERT INTO lab.migration VALUES ('29990101000000_Later', '99.0')");

        var refusal = await Assert.ThrowsAsync<StartupRefusedException>(() => new StorePreparation(connections).Run(TestContext.Current.CancellationToken));

        Assert.Contains("29990101000000_Later", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_LoginWithoutCreateRole_NamesTheStatements()
    {
        await postgres.CreateEmptyDatabase();
        await postgres.Execute("CREATE ROLE weak_owner LOGIN PASSWORD 'weak'");
        await postgres.Execute("CREATE DATABASE weak OWNER weak_owner");
        var owner = new NpgsqlConnectionStringBuilder((await postgres.Connections("weak")).Owner) { Username = "weak_owner", Password = "weak" };

        var refusal = await Assert.ThrowsAsync<StartupRefusedException>(
            () => new StorePreparation(StoreConnections.FromOwner(owner.ConnectionString)).Run(TestContext.Current.CancellationToken));

        Assert.Contains("ALTER ROLE \"weak_owner\" CREATEROLE;", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("CREATE ROLE \"weak_service\" LOGIN PASSWORD '…';", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_LoginWithoutCreateOnTheDatabase_NamesTheGrant()
    {
        await postgres.CreateEmptyDatabase();
        await postgres.Execute("CREATE ROLE stranger LOGIN PASSWORD 'stranger'");
        var connections = await postgres.CreateEmptyDatabase();
        var owner = new NpgsqlConnectionStringBuilder(connections.Owner) { Username = "stranger", Password = "stranger" };

        var refusal = await Assert.ThrowsAsync<StartupRefusedException>(
            () => new StorePreparation(StoreConnections.FromOwner(owner.ConnectionString)).Run(TestContext.Current.CancellationToken));

        Assert.Contains($"GRANT CREATE, CONNECT ON DATABASE \"{owner.Database}\" TO \"stranger\";", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_ServerThatIsNotThere_SaysWhere()
    {
        var connections = StoreConnections.FromOwner("Host=127.0.0.1;Port=1;Database=programme;Username=owner;Password=x");

        var refusal = await Assert.ThrowsAsync<StartupRefusedException>(() => new StorePreparation(connections).Run(TestContext.Current.CancellationToken));

        Assert.StartsWith("PostgreSQL at 127.0.0.1, database programme does not serve", refusal.Message, StringComparison.Ordinal);
    }

    private static Task<List<string>> Grants(StoreConnections connections) => Sql.Column(
        connections.Owner,
        """
        SELECT relnamespace::regnamespace || '.' || relname || ' ' || coalesce(relacl::text, '') FROM pg_class
        WHERE relnamespace IN ('lab'::regnamespace, 'pub'::regnamespace) ORDER BY 1
        """);
}
