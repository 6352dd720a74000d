namespace Toepan.Web.Hosting.Cluster;

/// <summary>
/// What lies where under the data folder's <c>cluster/</c>, all of it the cluster user's own.
/// </summary>
internal sealed record ClusterFolder(string Root)
{
    /// <summary>Longest socket path of Linux, sun_path less its closing zero.</summary>
    private const int LongestSocketPath = 107;
    private const string SocketName = ".s.PGSQL.5432";

    public string Data => Path.Combine(Root, "pgdata");

    /// <summary>Where a cluster is made before it takes its place, so that a half-made one is never mistaken for data.</summary>
    public string Unfinished => Path.Combine(Root, "pgdata.unfinished");

    public string Socket => Path.Combine(Root, "run");

    public string Log => Path.Combine(Root, "log");

    public string StartLog => Path.Combine(Log, "start.log");

    /// <summary>Password of the cluster's owner, mode 0600.</summary>
    public string Password => Path.Combine(Root, "password");

    public string VersionFile => Path.Combine(Data, "PG_VERSION");

    public string ProcessFile => Path.Combine(Data, "postmaster.pid");

    /// <summary>Settings of ours, read after PostgreSQL's own.</summary>
    public string Settings => Path.Combine(Data, "toepan.conf");

    public static bool FitsSocket(string folder) => System.Text.Encoding.UTF8.GetByteCount(Path.Combine(folder, SocketName)) <= LongestSocketPath;

    /// <summary>The last lines PostgreSQL wrote before it gave up, for an error message.</summary>
    public string LastLines(int count)
    {
        if (!Directory.Exists(Log))
        {
            return "";
        }

        var latest = new DirectoryInfo(Log).EnumerateFiles("*.log").OrderByDescending(file => file.LastWriteTimeUtc).Take(2).Reverse();
        return string.Join('\n', latest.SelectMany(file => File.ReadLines(file.FullName)).TakeLast(count));
    }
}
