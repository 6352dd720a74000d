using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Packages;

/// <summary>How many rows every table of the laboratory's schema has, to see that nothing was stored.</summary>
internal static class LabTables
{
    private const string Count = """
        SELECT string_agg(table_name || '=' || (xpath('/row/c/text()', query_to_xml(format('SELECT count(*) AS c FROM lab.%I', table_name), false, true, '')))[1]::text, ' ' ORDER BY table_name)
        FROM information_schema.tables WHERE table_schema = 'lab' AND table_name NOT IN ('token', 'data_protection_key')
        """;

    public static async Task<string> Rows(ApiHost api) => (string)(await Sql.Scalar(api.Connections.Owner, Count))!;
}
