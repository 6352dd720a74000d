using System.Globalization;
using Toepan.Api.Store;
using Toepan.Api.Tests.Store;

namespace Toepan.Api.Tests.Embargo;

/// <summary>A marked row, whose time has not come, in every table of the public schema, whatever columns it has.</summary>
internal static class EmbargoedRows
{
    public static async Task Plant(StoreConnections connections, Marks marks)
    {
        foreach (var table in await Sql.Column(connections.Owner, $"SELECT table_name::text FROM information_schema.tables WHERE table_schema = '{Schemas.Public}' AND table_type = 'BASE TABLE' ORDER BY 1"))
        {
            var columns = await Sql.Column(
                connections.Owner,
                $"SELECT concat_ws('|', column_name, data_type, is_nullable) FROM information_schema.columns WHERE table_schema = '{Schemas.Public}' AND table_name = '{table}' ORDER BY ordinal_position");
            var values = columns.Select(column => column.Split('|')).Select(column => (Name: column[0], Value: Value(column[0], column[1], column[2] == "YES", marks))).ToArray();
            await Sql.Execute(
                connections.Owner,
                $"INSERT INTO {Schemas.Public}.{table} ({string.Join(", ", values.Select(value => value.Name))}) VALUES ({string.Join(", ", values.Select(value => value.Value))})");
        }
    }

    private static string Value(string column, string type, bool nullable, Marks marks) => (column, type) switch
    {
        ("visible_from", _) => "now() + interval '1 day'",
        ("visible_to", _) => "NULL",
        (_, "text") => $"'{marks.In(column)}'",
        (_, "jsonb") => $"'{{\"title\": \"{marks.In(column)}\"}}'",
        (_, "bytea") => $"convert_to('{marks.In(column)}', 'UTF8')",
        (_, "uuid") => "'0190a6c7-2222-7aaa-8bbb-123456789abc'",
        (_, "integer" or "bigint" or "smallint" or "numeric" or "double precision") => 1.ToString(CultureInfo.InvariantCulture),
        (_, "boolean") => "false",
        _ when nullable => "NULL",
        (_, "timestamp with time zone") => "now() + interval '1 day'",
        _ => throw new InvalidOperationException($"The walk cannot plant a {type} into {column}."),
    };
}
