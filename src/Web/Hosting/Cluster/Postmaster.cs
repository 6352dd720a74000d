using System.Globalization;
using Toepan.Api.Store;

namespace Toepan.Web.Hosting.Cluster;

/// <summary>The server process of a cluster: found, started, stopped.</summary>
internal sealed class Postmaster(ClusterFolder folder, PostgresBinaries binaries, ClusterUser user)
{
    /// <summary>Recovery after a crash replays at most a few GB of log.</summary>
    private const string StartSeconds = "300";
    private const string StopSeconds = "60";

    /// <summary>
    /// The running server of this cluster, or null. The process file alone is not believed: after a crash its number may belong to
    /// somebody else, so the process must also stand in the cluster's data folder, as PostgreSQL does. Asked as the cluster's user, who may
    /// look at its own processes even where root may not (in a container).
    /// </summary>
    public async Task<ProcessIdentity?> Find()
    {
        if (ReadProcessId(folder) is not { } id || ProcessIdentity.Of(id) is not { } identity)
        {
            return null;
        }

        var place = await user.Run(["readlink", $"/proc/{id}/cwd"]);
        return place.Output == folder.Data ? identity : null;
    }

    /// <summary>Takes away the process file of a server that no longer runs; its number may have been given to another process.</summary>
    public async Task RemoveStaleProcessFile()
    {
        if (await Find() is null)
        {
            File.Delete(folder.ProcessFile);
        }
    }

    public Task<CommandResult> Start(CancellationToken cancellation) =>
        user.Run([binaries["pg_ctl"], "start", "-D", folder.Data, "-w", "-s", "-t", StartSeconds, "-l", folder.StartLog], cancellation);

    /// <summary>Asks for a clean stop, then for an immediate one, which the next start recovers from.</summary>
    /// <exception cref="StartupRefusedException">It still runs.</exception>
    public async Task Stop()
    {
        foreach (var mode in (string[])["fast", "immediate"])
        {
            if (await Find() is null)
            {
                return;
            }

            await user.Run([binaries["pg_ctl"], "stop", "-D", folder.Data, "-w", "-s", "-t", StopSeconds, "-m", mode]);
        }

        if (await Find() is { } running)
        {
            throw new StartupRefusedException($"The PostgreSQL server of {folder.Data} (process {running.Id}) does not stop.");
        }
    }

    private static int? ReadProcessId(ClusterFolder folder)
    {
        try
        {
            var first = File.ReadLines(folder.ProcessFile).FirstOrDefault();
            return int.TryParse(first, NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? id : null;
        }
        catch (IOException)
        {
            // No such file: nothing runs.
            return null;
        }
    }
}
