using System.Buffers;
using System.Globalization;
using Toepan.Api.Store;

namespace Toepan.Web.Hosting.Cluster;

/// <summary>What a private cluster refuses before it touches anything, each with what to do.</summary>
internal static class Guards
{
    private static readonly SearchValues<char> Odd = SearchValues.Create("\"'$`\\*?[]\n\r");

    /// <summary>pg_ctl hands the path to a shell, and find takes it as a pattern.</summary>
    public static void RefuseOddPath(string root)
    {
        if (root.AsSpan().ContainsAny(Odd))
        {
            throw new StartupRefusedException($"The data folder {root} has a quote, bracket, asterisk, question mark, dollar sign, backslash or line break in its name. Choose another: --data DIR");
        }
    }

    public static async Task RefuseClosedWay(ClusterFolder folder, ClusterUser user, CancellationToken cancellation)
    {
        var parent = Path.GetDirectoryName(folder.Root)!;
        if (user.Name is not null && await user.FirstClosed(parent, cancellation) is { } closed)
        {
            throw new StartupRefusedException(
                $"PostgreSQL runs as the OS user '{user.Name}', who may not pass through {closed}. Choose a data folder elsewhere (--data /var/lib/toepan), or open the way: chmod o+x {closed}");
        }
    }

    /// <summary>The highest version for a new cluster, the very version of an existing one.</summary>
    public static async Task<PostgresBinaries> ChooseBinaries(ClusterFolder folder, ClusterUser user, CancellationToken cancellation)
    {
        var installed = await PostgresBinaries.Find(cancellation);
        if (installed.Count == 0)
        {
            throw new StartupRefusedException(
                $"No PostgreSQL {PostgresBinaries.LeastMajor} or later is installed here. Install it (Debian and Ubuntu: apt-get install postgresql), or set ConnectionStrings__Programme to a server.");
        }

        if (!File.Exists(folder.VersionFile))
        {
            return installed[0];
        }

        await RefuseOtherOwner(folder, user, cancellation);
        var text = (await File.ReadAllTextAsync(folder.VersionFile, cancellation)).Trim();
        var major = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;
        return installed.FirstOrDefault(one => one.Major == major) ?? throw new StartupRefusedException(MoveAdvice.Text(folder, user, text, installed[0]));
    }

    private static async Task RefuseOtherOwner(ClusterFolder folder, ClusterUser user, CancellationToken cancellation)
    {
        var owner = (await Command.Run(["stat", "-c", "%U", folder.Data], cancellation)).Output;
        var wanted = user.Name ?? Environment.UserName;
        if (owner != wanted)
        {
            throw new StartupRefusedException(
                $"The cluster in {folder.Data} belongs to the OS user '{owner}', but would run as '{wanted}'. Start as the user who started it first, or give it away while it is stopped: chown -R {wanted}: {folder.Root}");
        }
    }
}
