using Npgsql;
using Toepan.Support;

namespace Toepan.Api.Tests.Store;

/// <summary>What the logins may do, asked of PostgreSQL itself.</summary>
public sealed class GrantTests(PostgresFixture postgres)
{
    /// <summary>Tables that hold what was measured, rated, done or brought: nobody may rewrite them. The list is the promise; the mark in the code keeps it.</summary>
    private static readonly string[] Kept =
    [
        "attachment", "attachment_note", "audit", "channel", "channel_flag", "channel_flag_withdrawal", "clearance", "current_rating",
        "data_protection_key", "film_timing", "finding", "finding_change", "historic_origin", "measure", "package", "package_chunk", "rating",
        "reduction", "result_batch", "result_withdrawal", "stored_file", "stored_file_chunk", "structural_point", "summary_measure",
        "summary_occupant", "summary_run", "vehicle_twin",
    ];

    public static TheoryData<string> KeptTables => [.. Kept];

    [Theory]
    [MemberData(nameof(KeptTables))]
    public async Task ServiceLogin_AppendOnlyTable_CannotUpdateDeleteOrTruncate(string table)
    {
        var service = (await postgres.CreateDatabase()).Service;

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(service, $"DELETE FROM lab.{table}"));
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(service, $"TRUNCATE lab.{table}"));
        Assert.Empty(await Sql.Column(
            service, $"SELECT privilege_type::text FROM information_schema.column_privileges WHERE table_schema = 'lab' AND table_name = '{table}' AND privilege_type = 'UPDATE'"));
    }

    [Fact]
    public async Task ServiceLogin_EveryOtherTable_IsKnownToBeChangeable()
    {
        var service = (await postgres.CreateDatabase()).Service;

        var changeable = await Sql.Column(
            service, "SELECT table_name::text FROM information_schema.table_privileges WHERE table_schema = 'lab' AND grantee = current_user AND privilege_type = 'DELETE' ORDER BY 1");

        Assert.Equal(
            [
                "account",
                "account_claim",
                "account_login",
                "account_role",
                "account_token",
                "equipment",
                "invitation",
                "planned_run",
                "recovery_code",
                "role",
                "role_claim",
                "saved_question",
                "second_factor",
                "specimen",
                "test_run",
                "token",
                "vehicle",
                "vehicle_class",
            ],
            changeable);
    }

    [Fact]
    public async Task ServiceLogin_Schema_CannotBeChanged()
    {
        var service = (await postgres.CreateDatabase()).Service;

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(service, "CREATE TABLE lab.more (id int)"));
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(service, "ALTER TABLE lab.audit DISABLE TRIGGER ALL"));
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(service, "DROP TABLE lab.audit"));
    }

    [Fact]
    public async Task ServiceLogin_ReleasedDocument_CannotBeRewritten()
    {
        var service = (await postgres.CreateDatabase()).Service;
        await Sql.Execute(service, "INSERT INTO pub.release VALUES ('slug', 1, '{}', now(), null)");

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(service, "UPDATE pub.release SET document = '{\"a\":1}'"));
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(service, "DELETE FROM pub.release"));
        Assert.Equal(1, await Sql.Execute(service, "UPDATE pub.release SET visible_to = now()"));
    }

    [Fact]
    public async Task PublicLogin_Lab_SeesNothing()
    {
        var visitor = (await postgres.CreateDatabase()).Public;

        foreach (var table in Kept.Append("account").Append("token"))
        {
            Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(visitor, $"SELECT 1 FROM lab.{table}"));
        }
    }

    [Fact]
    public async Task PublicLogin_Releases_SeesOnlyThoseWhoseTimeHasCome()
    {
        var connections = await postgres.CreateDatabase();
        await Sql.Execute(
            connections.Service,
            """
            INSERT INTO pub.release VALUES
              ('embargoed', 1, '{}', now() + interval '1 hour', null),
              ('out', 1, '{}', now() - interval '1 second', null),
              ('withdrawn', 1, '{}', now() - interval '2 hours', now() - interval '1 hour'),
              ('soon withdrawn', 1, '{}', now() - interval '2 hours', now() + interval '1 hour')
            """);

        Assert.Equal(["out", "soon withdrawn"], await Sql.Column(connections.Public, "SELECT slug FROM pub.release ORDER BY slug"));
        Assert.Equal(4L, await Sql.Scalar(connections.Service, "SELECT count(*) FROM pub.release"));
    }

    [Fact]
    public async Task PublicLogin_Release_AppearsWhenItsTimeComes()
    {
        var connections = await postgres.CreateDatabase();
        await Sql.Execute(connections.Service, "INSERT INTO pub.release VALUES ('soon', 1, '{}', clock_timestamp() + interval '300 milliseconds', null)");
        var before = await Sql.Column(connections.Public, "SELECT slug FROM pub.release");
        await Task.Delay(TimeSpan.FromMilliseconds(500), TestContext.Current.CancellationToken);

        Assert.Empty(before);
        Assert.Equal(["soon"], await Sql.Column(connections.Public, "SELECT slug FROM pub.release"));
    }

    [Fact]
    public async Task PublicLogin_Releases_CannotWrite()
    {
        var visitor = (await postgres.CreateDatabase()).Public;
        const string Writable = "SET TRANSACTION READ WRITE; ";

        Assert.Equal(PostgresErrorCodes.ReadOnlySqlTransaction, await Sql.Refusal(visitor, "INSERT INTO pub.release VALUES ('x', 1, '{}', now(), null)"));
        Assert.Equal(
            PostgresErrorCodes.InsufficientPrivilege,
            await Sql.Refusal(visitor, Writable + "INSERT INTO pub.release VALUES ('x', 1, '{}', now(), null)"));
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(visitor, Writable + "CREATE TABLE pub.more (id int)"));
    }

    [Fact]
    public async Task Logins_Attributes_AreTheLeast()
    {
        var connections = await postgres.CreateDatabase();
        const string Powers = "SELECT (rolsuper OR rolcreaterole OR rolcreatedb OR rolbypassrls OR rolreplication) FROM pg_roles WHERE rolname = current_user";

        Assert.Equal(false, await Sql.Scalar(connections.Service, Powers));
        Assert.Equal(false, await Sql.Scalar(connections.Public, Powers));
        Assert.Equal(false, await Sql.Scalar(connections.Analyst!, Powers));
    }
}
