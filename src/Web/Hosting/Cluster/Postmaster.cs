using System.Globalization;
using Toepan.Api.Store;

namespace Toepan.Web.Hosting.Cluster;

/// <summary>The server process of a cluster: found, started, stopped.</summary>
internal sealed class Postmaster(ClusterFolder folder, PostgresBinaries binaries, ClusterUser user)
{
    /// <summary>Recovery after a crash replays at most a few GB of log.</summary>
    private const string StartSeconds = "300";
    private const string StopSeconds = "60";
    private static readonly TimeSpan OrphanPatience = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan OrphanPause = TimeSpan.FromMilliseconds(100);

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

    /// <summary>
    /// Takes away what a server that no longer runs left behind: its process file and its sockets, whose numbers may have been given to
    /// other processes. PostgreSQL's own guard against a second server over living backends is in that file, so first the last process
    /// that stands in the data folder must have gone; backends go by themselves once their postmaster has.
    /// </summary>
    /// <exception cref="StartupRefusedException">Some stay.</exception>
    public async Task ClearAway(string socketFolder, CancellationToken cancellation)
    {
        var patience = OrphanPatience;
        for (var standing = await Standing(cancellation); standing.Count > 0; standing = await Standing(cancellation))
        {
            if (patience <= TimeSpan.Zero)
            {
                throw new StartupRefusedException(
                    $"Processes {string.Join(", ", standing)} of an earlier PostgreSQL still use {folder.Data}. End them (kill {string.Join(' ', standing)}) and start again.");
            }

            await Task.Delay(OrphanPause, cancellation);
            patience -= OrphanPause;
        }

        File.Delete(folder.ProcessFile);
        foreach (var left in Directory.EnumerateFiles(socketFolder, ".s.PGSQL.*"))
        {
            File.Delete(left);
        }
    }

    /// <summary>Process ids of everything whose working folder is the cluster's data, as the cluster's user sees it.</summary>
    private async Task<IReadOnlyList<string>> Standing(CancellationToken cancellation)
    {
        var found = await user.Run(["find", "/proc", "-maxdepth", "2", "-name", "cwd", "-lname", folder.Data, "-printf", "%h\\n"], cancellation);
        return [.. found.Output.Split('\n').Where(line => line.StartsWith("/proc/", StringComparison.Ordinal)).Select(line => line["/proc/".Length..]).Where(id => id.All(char.IsAsciiDigit))];
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
