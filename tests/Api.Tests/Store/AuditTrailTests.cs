using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Time.Testing;
using Npgsql;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Api.Store.Tables;
using Toepan.Support;

namespace Toepan.Api.Tests.Store;

/// <summary>The history is chained by the database, and every way of tampering with it is found.</summary>
public sealed class AuditTrailTests(PostgresFixture postgres)
{
    private static readonly DateTimeOffset Noon = new(2031, 3, 14, 12, 0, 0, TimeSpan.Zero);
    private static readonly Viewer Someone = new("someone", new HashSet<Role> { Role.Engineer });
    private readonly AuditTrail audit = new(new FakeTimeProvider(Noon));

    [Fact]
    public async Task Append_Rows_AreNumberedAndChained()
    {
        await using var source = NpgsqlDataSource.Create((await Filled()).Service);
        await using var db = new ProgrammeDb(ProgrammeDbOptions.For(source));

        var rows = await db.Set<AuditRow>().OrderBy(row => row.Sequence).ToListAsync(TestContext.Current.CancellationToken);

        Assert.Equal([1, 2, 3], rows.Select(row => row.Sequence));
        Assert.Empty(rows[0].PreviousHash);
        Assert.Equal(rows[0].Hash, rows[1].PreviousHash);
        Assert.Equal(rows[1].Hash, rows[2].PreviousHash);
        Assert.Null(await AuditTrail.FirstBroken(db, TestContext.Current.CancellationToken));
    }

    /// <summary>The text that is hashed is put together here anew, from its description in audit.sql, and hashed by .NET.</summary>
    [Fact]
    public async Task Append_Hash_IsSha256OfTheRowsText()
    {
        await using var source = NpgsqlDataSource.Create((await Filled()).Service);
        await using var db = new ProgrammeDb(ProgrammeDbOptions.For(source));
        var second = await db.Set<AuditRow>().SingleAsync(row => row.Sequence == 2, TestContext.Current.CancellationToken);

        var text = "[2, \"2031-03-14T12:00:00.000000Z\", \"someone\", \"flag\", \"test/FO-0042\", {\"flags\": 0}, {\"flags\": 1}, \""
            + Convert.ToHexStringLower(second.PreviousHash) + "\"]";

        Assert.Equal(SHA256.HashData(Encoding.UTF8.GetBytes(text)), second.Hash);
    }

    [Theory]
    [InlineData("UPDATE lab.audit SET who = 'somebody else' WHERE sequence = 2", 2L)]
    [InlineData("UPDATE lab.audit SET after = '{\"flags\": 2}' WHERE sequence = 2", 2L)]
    [InlineData("UPDATE lab.audit SET at = at + interval '1 microsecond' WHERE sequence = 1", 1L)]
    [InlineData("DELETE FROM lab.audit WHERE sequence = 2", 2L)]
    [InlineData("DELETE FROM lab.audit WHERE sequence = 1", 1L)]
    public async Task FirstBroken_TamperedByTheOwner_IsFound(string tampering, long broken)
    {
        var connections = await Filled();
        await Sql.Execute(connections.Owner, tampering);

        Assert.Equal(broken, await Sql.Scalar(connections.Service, "SELECT lab.first_broken_audit()"));
    }

    [Fact]
    public async Task Append_NumberAndHashGivenByTheCaller_AreOverruled()
    {
        var connections = await Filled();

        await Sql.Execute(
            connections.Service,
            "INSERT INTO lab.audit (sequence, at, who, action, entity, previous_hash, hash) VALUES (99, now(), 'forger', 'x', 'x', 'forged', 'forged')");

        Assert.Equal(4L, await Sql.Scalar(connections.Service, "SELECT max(sequence) FROM lab.audit"));
        Assert.Equal(DBNull.Value, await Sql.Scalar(connections.Service, "SELECT lab.first_broken_audit()"));
    }

    [Fact]
    public async Task Append_ManyAtOnce_LeavesNoGap()
    {
        const int Writers = 12;
        var connections = await Filled();
        await using var source = NpgsqlDataSource.Create(connections.Service);

        await Task.WhenAll(Enumerable.Range(0, Writers).Select(async writer =>
        {
            await using var db = new ProgrammeDb(ProgrammeDbOptions.For(source));
            await audit.Append(db, Someone, new("try", $"writer/{writer}"), TestContext.Current.CancellationToken);
        }));

        Assert.Equal(3L + Writers, await Sql.Scalar(connections.Service, "SELECT max(sequence) FROM lab.audit"));
        Assert.Equal(DBNull.Value, await Sql.Scalar(connections.Service, "SELECT lab.first_broken_audit()"));
    }

    private async Task<StoreConnections> Filled()
    {
        var connections = await postgres.CreateDatabase();
        await using var source = NpgsqlDataSource.Create(connections.Service);
        await using var db = new ProgrammeDb(ProgrammeDbOptions.For(source));
        await audit.Append(db, Someone, new("upload", "test/FO-0042", After: new { sha256 = "ab" }));
        await audit.Append(db, Someone, new("flag", "test/FO-0042", new { flags = 0 }, new { flags = 1 }));
        await audit.Append(db, Someone, new("withdraw", "test/FO-0042"));
        return connections;
    }
}
