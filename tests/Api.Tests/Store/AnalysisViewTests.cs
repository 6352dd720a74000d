using Npgsql;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Api.Tests.Analysis.Historic;
using Toepan.Api.Tests.Programme;
using Toepan.Support;

namespace Toepan.Api.Tests.Store;

/// <summary>Schema analysis as the analyst's login sees it, asked of PostgreSQL itself.</summary>
public sealed class AnalysisViewTests(PostgresFixture postgres)
{
    private const string Views = "SELECT table_name::text FROM information_schema.views WHERE table_schema = 'analysis' ORDER BY 1";

    [Fact]
    public async Task Views_OfAnalysis_AreReadableAndCommentedColumnByColumn()
    {
        var connections = await postgres.CreateDatabase();

        var views = await Sql.Column(connections.Analyst!, Views);
        foreach (var view in views)
        {
            Assert.NotNull(await Sql.Scalar(connections.Analyst!, $"SELECT count(*) FROM analysis.{view}"));
        }

        Assert.Equal(
            [
                "driver_measures", "findings", "measure_catalogue", "measures", "method_editions", "occupants", "ratings", "regions", "repeats", "runs", "structure_points",
                "summary_results", "vehicle_classes", "vehicles",
            ],
            views);
        Assert.Empty(await Sql.Column(
            connections.Analyst!,
            """
            SELECT c.relname || coalesce('.' || a.attname, '') FROM pg_class c
            LEFT JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0
            WHERE c.relnamespace = 'analysis'::regnamespace
              AND (coalesce(obj_description(c.oid, 'pg_class'), '') = '' OR coalesce(col_description(c.oid, a.attnum), '') = '')
            """));
    }

    [Fact]
    public async Task Views_OfAProgramme_SayWhatTheRoutesSay()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        await engineer.Bring(1);
        await engineer.Bring(ResultClient.File("head.hic15", ("A-1", "500"), ("A-2", "600")));
        var analyst = api.Connections.Analyst!;

        var hic = (await engineer.Read("/api/v1/tests/FO-0001/measures")).Json.EnumerateArray()
            .Single(measure => measure.GetProperty("code").GetString() == "head.hic15" && measure.GetProperty("position").GetInt32() == 1).GetProperty("value").GetDouble();
        var overall = (await engineer.Read("/api/v1/tests/FO-0001/rating")).Member("overall");
        var findings = (await engineer.Read("/api/v1/tests/FO-0001/findings")).Json.GetArrayLength();

        Assert.Equal(hic, await Sql.Scalar(analyst, "SELECT head_hic15 FROM driver_measures WHERE test = 'FO-0001'"));
        Assert.Equal(overall, await Sql.Scalar(analyst, "SELECT overall FROM runs WHERE test = 'FO-0001'"));
        Assert.Equal((long)findings, await Sql.Scalar(analyst, "SELECT count(*) FROM findings WHERE test = 'FO-0001'"));
        Assert.Equal(["A-1 summary 500", "A-2 summary 600"], await Sql.Column(analyst, "SELECT test || ' ' || kind || ' ' || value FROM measures WHERE class = 'old-class' ORDER BY test"));
        Assert.Equal(["old-a-1"], await Sql.Column(analyst, "SELECT vehicle FROM vehicles WHERE from_historic_results AND vehicle = 'old-a-1'"));
        Assert.Equal(true, await Sql.Scalar(analyst, "SELECT count(*) = 7 * count(DISTINCT position) + 1 FROM regions WHERE test = 'FO-0001'"));
    }

    [Theory]
    [InlineData("SELECT 1 FROM lab.account")]
    [InlineData("SELECT 1 FROM lab.token")]
    [InlineData("SELECT 1 FROM lab.data_protection_key")]
    [InlineData("SELECT 1 FROM lab.audit")]
    [InlineData("SELECT 1 FROM lab.measure")]
    [InlineData("SELECT 1 FROM pub.release")]
    [InlineData("SELECT rolpassword FROM pg_authid")]
    [InlineData("SELECT pg_read_file('/etc/passwd')")]
    [InlineData("BEGIN; SET TRANSACTION READ WRITE; SELECT lo_create(0)")]
    [InlineData("BEGIN; SET TRANSACTION READ WRITE; CREATE TEMP TABLE more (id int)")]
    [InlineData("BEGIN; SET TRANSACTION READ WRITE; CREATE TABLE analysis.more (id int)")]
    [InlineData("BEGIN; SET TRANSACTION READ WRITE; CREATE TABLE public.more (id int)")]
    [InlineData("BEGIN; SET TRANSACTION READ WRITE; CREATE SCHEMA more")]
    [InlineData("BEGIN; SET TRANSACTION READ WRITE; UPDATE analysis.vehicle_classes SET title = ''")]
    [InlineData("BEGIN; SET TRANSACTION READ WRITE; DELETE FROM analysis.ratings")]
    public async Task AnalystLogin_AnythingBesideTheViews_IsRefused(string statement)
    {
        var connections = await postgres.CreateDatabase();
        await new StorePreparation(connections).Run(TestContext.Current.CancellationToken); // Rights on a database are not copied with its template.

        var state = await Sql.Refusal(connections.Analyst!, statement);

        // A view over several tables cannot be written by anybody; everything else is a right that is missing.
        Assert.Contains(state, new[] { PostgresErrorCodes.InsufficientPrivilege, PostgresErrorCodes.ObjectNotInPrerequisiteState });
    }

    [Fact]
    public async Task AnalystLogin_Settings_AreReadOnlyAndBounded()
    {
        var analyst = (await postgres.CreateDatabase()).Analyst!;

        Assert.Equal("on", await Sql.Scalar(analyst, "SHOW default_transaction_read_only"));
        Assert.Equal("2min", await Sql.Scalar(analyst, "SHOW statement_timeout"));
        Assert.Equal(PostgresErrorCodes.ReadOnlySqlTransaction, await Sql.Refusal(analyst, "CREATE TABLE more (id int)"));
    }

    [Fact]
    public async Task Run_Again_LeavesTheViewsAndTheirReadersAlone()
    {
        var connections = await postgres.CreateDatabase();
        await using var source = NpgsqlDataSource.Create(connections.Analyst!);
        await using var reading = await source.OpenConnectionAsync(TestContext.Current.CancellationToken);
        await using var transaction = await reading.BeginTransactionAsync(TestContext.Current.CancellationToken);
        await using var command = new NpgsqlCommand("SELECT count(*) FROM runs", reading);
        await command.ExecuteScalarAsync(TestContext.Current.CancellationToken);
        const string Ids = "SELECT oid::text FROM pg_class WHERE relnamespace = 'analysis'::regnamespace ORDER BY 1";
        var before = await Sql.Column(connections.Owner, Ids);

        await new StorePreparation(connections).Run(TestContext.Current.CancellationToken);

        Assert.Equal(before, await Sql.Column(connections.Owner, Ids));
    }

    [Fact]
    public async Task Docs_Analysis_NamesEveryView()
    {
        var connections = await postgres.CreateDatabase();
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Program.sln")))
        {
            folder = folder.Parent!;
        }

        var page = await File.ReadAllTextAsync(Path.Combine(folder.FullName, "docs", "analysis.md"), TestContext.Current.CancellationToken);

        Assert.All(await Sql.Column(connections.Owner, Views), view => Assert.Contains($"`{view}`", page, StringComparison.Ordinal));
    }
}
