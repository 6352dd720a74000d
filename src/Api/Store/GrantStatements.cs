using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Toepan.Api.Store;

/// <summary>What each login may do, written from the model: new tables are covered without anybody remembering them.</summary>
public static class GrantStatements
{
    private const string AppendOnly = "SELECT, INSERT";
    private const string Mutable = "SELECT, INSERT, UPDATE, DELETE";
    private const string Released = "SELECT, INSERT, UPDATE (visible_from, visible_to)";

    /// <summary>One script, to be run in a transaction by the owner; takes back everything first, so a table that became append-only loses its grants.</summary>
    public static string For(IModel model, StoreRoles roles)
    {
        var (service, visitor) = (Quote(roles.Service), Quote(roles.Public));
        var everybody = string.Join(", ", new[] { "PUBLIC", service, visitor }.Concat(roles.Analyst is { } reader ? [Quote(reader)] : []));
        string[] statements =
        [
            $"REVOKE ALL ON SCHEMA lab, pub, analysis FROM {everybody}",
            $"REVOKE ALL ON ALL TABLES IN SCHEMA lab, pub, analysis FROM {everybody}",
            $"GRANT USAGE ON SCHEMA lab, pub TO {service}",
            $"GRANT USAGE ON SCHEMA pub TO {visitor}",
            $"GRANT USAGE, SELECT ON ALL SEQUENCES IN SCHEMA lab TO {service}",
            $"GRANT SELECT ON {Schemas.Lab}.{Schemas.MigrationTable} TO {service}",
            .. model.GetRelationalModel().Tables.SelectMany(table => ForTable(table, service, visitor)),
            .. ForAnalyst(roles),
        ];
        return string.Join(";\n", statements);
    }

    // Nothing but the views, and nowhere to put anything: not even a temporary table or a large object, whose functions only the cluster's owner can close.
    private static string[] ForAnalyst(StoreRoles roles) => roles.Analyst is not { } analyst ? [] :
    [
        $"GRANT USAGE ON SCHEMA analysis TO {Quote(analyst)}",
        $"GRANT SELECT ON ALL TABLES IN SCHEMA analysis TO {Quote(analyst)}",
        "DO $$ BEGIN EXECUTE format('REVOKE TEMPORARY ON DATABASE %I FROM PUBLIC', current_database()); END $$",
        """
        DO $$ BEGIN
          IF (SELECT rolsuper FROM pg_roles WHERE rolname = current_user) THEN
            REVOKE EXECUTE ON FUNCTION lo_create(oid), lo_creat(integer), lo_from_bytea(oid, bytea), lo_put(oid, bigint, bytea), lowrite(integer, bytea), lo_unlink(oid) FROM PUBLIC;
          END IF;
        END $$
        """,
    ];

    public static string Quote(string identifier) => $"\"{identifier.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static string[] ForTable(ITable table, string service, string visitor)
    {
        var name = $"{Quote(table.Schema!)}.{Quote(table.Name)}";
        return table.Schema switch
        {
            Schemas.Lab => [$"GRANT {(IsAll<IAppendOnly>(table) ? AppendOnly : Mutable)} ON {name} TO {service}"],
            Schemas.Public when IsAll<IReleased>(table) => ForReleased(name, service, visitor),
            _ => throw new InvalidOperationException($"Table {name} is neither of schema lab nor a released table of schema pub."),
        };
    }

    private static string[] ForReleased(string name, string service, string visitor) =>
    [
        $"GRANT {Released} ON {name} TO {service}",
        $"GRANT SELECT ON {name} TO {visitor}",
        $"ALTER TABLE {name} ENABLE ROW LEVEL SECURITY",
        $"DROP POLICY IF EXISTS kept ON {name}",
        $"CREATE POLICY kept ON {name} TO {service} USING (true) WITH CHECK (true)",
        $"DROP POLICY IF EXISTS released ON {name}",
        $"CREATE POLICY released ON {name} FOR SELECT TO {visitor} USING (visible_from <= statement_timestamp() "
            + "AND (visible_to IS NULL OR visible_to > statement_timestamp()))",
    ];

    private static bool IsAll<T>(ITable table) => table.EntityTypeMappings.All(mapping => typeof(T).IsAssignableFrom(mapping.TypeBase.ClrType));
}
