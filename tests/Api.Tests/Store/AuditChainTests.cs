using System.Diagnostics;
using Microsoft.Extensions.Time.Testing;
using Npgsql;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Store;

/// <summary>Whatever the database's owner does to the history, the first broken link is named; what cannot be known without a note elsewhere is known with one.</summary>
public sealed class AuditChainTests(PostgresFixture postgres)
{
    private const int Rows = 5;
    private const string Past = "ALTER TABLE lab.audit DISABLE TRIGGER chain_audit; ";
    private const string Insert = "INSERT INTO lab.audit (sequence, at, who, action, entity, before, after, previous_hash, hash) ";
    private static readonly Viewer Someone = new("someone", new HashSet<Role> { Role.Engineer });
    private readonly AuditTrail audit = new(new FakeTimeProvider(new(2031, 3, 14, 12, 0, 0, TimeSpan.Zero)));

    /// <summary>Forgery, the link that breaks first, and a word of what is said about it.</summary>
    public static TheoryData<string, long, string> Forgeries => new()
    {
        { "UPDATE lab.audit SET who = 'somebody else' WHERE sequence = 3", 3, "changed" },
        { "UPDATE lab.audit SET after = '{\"number\": 9}' WHERE sequence = 4", 4, "changed" },
        { "UPDATE lab.audit SET before = NULL WHERE sequence = 2", 2, "changed" },
        { "UPDATE lab.audit SET at = at + interval '1 microsecond' WHERE sequence = 5", 5, "changed" },
        { "DELETE FROM lab.audit WHERE sequence = 2", 2, "missing" },
        { "DELETE FROM lab.audit WHERE sequence = 1", 1, "missing" },
        { "UPDATE lab.audit SET sequence = 99 WHERE sequence = 2; UPDATE lab.audit SET sequence = 2 WHERE sequence = 4; UPDATE lab.audit SET sequence = 4 WHERE sequence = 99", 2, "moved" },
        { "UPDATE lab.audit SET hash = sha256('x') WHERE sequence = 5", 5, "changed" },
        { Past + Insert + "SELECT 6, at, 'forger', action, entity, before, after, hash, sha256('x') FROM lab.audit WHERE sequence = 5", 6, "inserted" },
        { Past + Insert + "SELECT 0, at, 'forger', action, entity, before, after, ''::bytea, sha256('x') FROM lab.audit WHERE sequence = 5", 0, "inserted" },
        { "UPDATE lab.audit SET sequence = sequence + 100 WHERE sequence >= 3; UPDATE lab.audit SET sequence = sequence - 99 WHERE sequence >= 100; "
            + Past + Insert + "SELECT 3, at, 'forger', action, entity, before, after, hash, sha256('x') FROM lab.audit WHERE sequence = 2", 3, "inserted" },
        // A row rewritten with its own hash made right: it is the next that no longer follows.
        { "UPDATE lab.audit SET who = 'forger' WHERE sequence = 2; UPDATE lab.audit a SET hash = sha256(convert_to(lab.audit_text(a), 'UTF8')) WHERE sequence = 2", 3, "does not continue" },
    };

    [Theory]
    [MemberData(nameof(Forgeries))]
    public async Task Verify_ForgedByTheOwner_NamesTheFirstBrokenLink(string forgery, long broken, string says)
    {
        var connections = await Filled();
        await Sql.Execute(connections.Owner, forgery);

        var found = await Verify(connections);

        Assert.Equal(broken, found.Break?.Sequence);
        Assert.Contains(says, found.Break!.What, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Verify_Untouched_IsWholeAndTellsItsHead()
    {
        var connections = await Filled();

        var found = await Verify(connections);

        Assert.Equal((Rows, null), (found.Entries, found.Break));
        Assert.Equal(await Sql.Scalar(connections.Service, "SELECT '5:' || encode(hash, 'hex') FROM lab.audit WHERE sequence = 5"), found.Head!.ToString());
    }

    [Fact]
    public async Task Verify_FunctionsReplacedByTheOwner_FindsItAllTheSame()
    {
        var connections = await Filled();
        await Sql.Execute(
            connections.Owner,
            """
            CREATE OR REPLACE FUNCTION lab.first_broken_audit() RETURNS bigint LANGUAGE sql AS 'SELECT NULL::bigint';
            CREATE FUNCTION lab.sha256(bytea) RETURNS bytea LANGUAGE sql AS 'SELECT ''x''::bytea';
            UPDATE lab.audit SET who = 'forger' WHERE sequence = 4
            """);

        Assert.Equal(4, (await Verify(connections)).Break?.Sequence);
    }

    [Theory]
    [InlineData("DELETE FROM lab.audit WHERE sequence >= 4", 4L)]
    [InlineData("DELETE FROM lab.audit", 1L)]
    [InlineData(
        "CREATE TEMP TABLE kept AS SELECT * FROM lab.audit; DELETE FROM lab.audit; INSERT INTO lab.audit (at, who, action, entity, before, after) SELECT at, 'forger', action, entity, before, after FROM kept ORDER BY sequence",
        5L)]
    public async Task Verify_CutOffOrWrittenAnew_IsKnownByAnEarlierNoteAlone(string forgery, long broken)
    {
        var connections = await Filled();
        var noted = (await Verify(connections)).Head!;
        await Sql.Execute(connections.Owner, forgery);

        Assert.Null((await Verify(connections)).Break);
        Assert.Equal(broken, (await Verify(connections, noted)).Break?.Sequence);
    }

    [Fact]
    public async Task Command_WholeThenForged_EndsWithZeroThenOneAndNamesTheLink()
    {
        var connections = await Filled();

        var (whole, wholeText) = await Command(connections);
        await Sql.Execute(connections.Owner, "UPDATE lab.audit SET action = 'nothing' WHERE sequence = 3");
        var (forged, forgedText) = await Command(connections);

        Assert.Equal((0, 1), (whole, forged));
        Assert.Contains("The history is whole: 5 entries", wholeText, StringComparison.Ordinal);
        Assert.Contains("The history is broken at entry 3: its values do not give its hash", forgedText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Command_HeadKeptFromBefore_NoticesACutOffEnd()
    {
        var connections = await Filled();
        var head = (await Command(connections)).Output.Trim().Split(' ')[^1];
        await Sql.Execute(connections.Owner, "DELETE FROM lab.audit WHERE sequence = 5");

        Assert.Equal(0, (await Command(connections)).Code);
        var (code, text) = await Command(connections, "--expect", head);

        Assert.Equal(1, code);
        Assert.Contains("broken at entry 5: it is missing", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ServiceLogin_History_CannotUpdateOrDelete()
    {
        var service = (await Filled()).Service;

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(service, "UPDATE lab.audit SET who = 'x'"));
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(service, "DELETE FROM lab.audit"));
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(service, "TRUNCATE lab.audit"));
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.Refusal(service, "CREATE OR REPLACE FUNCTION lab.audit_text(lab.audit) RETURNS text LANGUAGE sql AS $$ SELECT '' $$"));
    }

    internal static async Task<(int Code, string Output)> Run(IReadOnlyDictionary<string, string> environment, params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "Toepan.Web.dll"), "verify-audit", .. arguments])
        {
            RedirectStandardOutput = true, RedirectStandardError = true,
        };
        start.Environment.Remove("ConnectionStrings__Programme");
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, output + await errors);
    }

    private static Task<(int Code, string Output)> Command(StoreConnections connections, params string[] arguments) =>
        Run(new Dictionary<string, string> { ["ConnectionStrings__Programme"] = connections.Owner }, arguments);

    private static async Task<AuditVerification> Verify(StoreConnections connections, params AuditAnchor[] anchors)
    {
        await using var source = NpgsqlDataSource.Create(connections.Service);
        await using var connection = await source.OpenConnectionAsync(TestContext.Current.CancellationToken);
        return await AuditChain.Verify(connection, anchors, TestContext.Current.CancellationToken);
    }

    private async Task<StoreConnections> Filled()
    {
        var connections = await postgres.CreateDatabase();
        await using var source = NpgsqlDataSource.Create(connections.Service);
        await using var db = new ProgrammeDb(ProgrammeDbOptions.For(source));
        for (var number = 1; number <= Rows; number++)
        {
            await audit.Append(db, Someone, new("count", $"test/FO-{number:0000}", new { number = number - 1 }, new { number, text = "ä, \"quoted\" \\ 漢" }));
        }

        return connections;
    }
}
