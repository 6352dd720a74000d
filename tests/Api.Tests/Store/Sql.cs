using Npgsql;

namespace Toepan.Api.Tests.Store;

/// <summary>Statements as a login runs them, past every layer of ours.</summary>
internal static class Sql
{
    public static async Task<int> Execute(string connectionString, string statement)
    {
        await using var source = NpgsqlDataSource.Create(connectionString);
        await using var command = source.CreateCommand(statement);
        return await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }

    public static async Task<object?> Scalar(string connectionString, string query)
    {
        await using var source = NpgsqlDataSource.Create(connectionString);
        await using var command = source.CreateCommand(query);
        return await command.ExecuteScalarAsync(TestContext.Current.CancellationToken);
    }

    public static async Task<List<string>> Column(string connectionString, string query)
    {
        await using var source = NpgsqlDataSource.Create(connectionString);
        await using var command = source.CreateCommand(query);
        await using var reader = await command.ExecuteReaderAsync(TestContext.Current.CancellationToken);
        var values = new List<string>();
        while (await reader.ReadAsync(TestContext.Current.CancellationToken))
        {
            values.Add(reader.GetString(0));
        }

        return values;
    }

    /// <summary>SQLSTATE of the refusal; fails where the statement passes.</summary>
    public static async Task<string> Refusal(string connectionString, string statement) =>
        (await Assert.ThrowsAsync<PostgresException>(() => Execute(connectionString, statement))).SqlState;
}
