namespace Toepan.Web.Hosting.Cluster;

/// <summary>The settings file of a private cluster. Durability is PostgreSQL's default: fsync stays on.</summary>
internal static class ClusterSettings
{
    public static string Text(ClusterFolder folder, string socketFolder, IReadOnlyDictionary<string, string>? further)
    {
        var all = new Dictionary<string, string>
        {
            ["listen_addresses"] = "",
            ["port"] = "5432",
            ["unix_socket_directories"] = $"\"{socketFolder}\"",
            ["unix_socket_permissions"] = "0700",
            ["max_connections"] = "100",
            ["max_wal_size"] = "2GB",
            ["logging_collector"] = "on",
            ["log_directory"] = folder.Log,
            ["log_filename"] = "postgres-%a.log",
            ["log_truncate_on_rotation"] = "on",
            ["log_rotation_age"] = "1d",
            ["log_rotation_size"] = "0",
            // Statements carry passwords of logins and people's words; neither belongs in a log.
            ["log_min_error_statement"] = "panic",
            ["log_timezone"] = "UTC",
            ["timezone"] = "UTC",
        };
        foreach (var (name, value) in further ?? new Dictionary<string, string>())
        {
            all[name] = value;
        }

        return string.Concat(all.Select(one => $"{one.Key} = '{one.Value.Replace("'", "''", StringComparison.Ordinal)}'\n"));
    }
}
