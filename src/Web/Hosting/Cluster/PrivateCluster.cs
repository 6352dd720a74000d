using System.Security.Cryptography;
using Npgsql;
using Toepan.Api.Store;

namespace Toepan.Web.Hosting.Cluster;

/// <summary>
/// A PostgreSQL cluster that belongs to one data folder: made at first start, reached over a socket alone, started and stopped by its
/// owner. The caller holds the folder's lock. Not safe for calls at the same time.
/// </summary>
/// <param name="root">Absolute path of the cluster's folder.</param>
/// <param name="settings">PostgreSQL settings beyond the usual, e.g. fsync off where tests throw the cluster away.</param>
public sealed class PrivateCluster(string root, IReadOnlyDictionary<string, string>? settings = null)
{
    public const string Owner = "toepan";
    private const int PasswordBytes = 32;
    private const int LogLines = 8;
    private const int SocketLine = 4;
    private readonly ClusterFolder folder = new(root);
    private ClusterUser user = null!;
    private PostgresBinaries binaries = null!;
    private ProcessIdentity? running;
    private string? temporarySocket;
    private string password = "";

    private string SocketFolder => temporarySocket ?? folder.Socket;

    /// <summary>Whether the postmaster of this cluster runs.</summary>
    public bool Alive => running is { Alive: true };

    /// <summary>The owner's connection string for a database of the cluster; valid once started.</summary>
    public string ConnectionString(string database) => new NpgsqlConnectionStringBuilder
    {
        Host = SocketFolder, Database = database, Username = Owner, Password = password,
    }.ConnectionString;

    /// <summary>Whether a folder holds a cluster.</summary>
    public static bool Exists(string root) => File.Exists(new ClusterFolder(root).VersionFile);

    /// <summary>The owner's connection string for a cluster that another service of ours runs.</summary>
    /// <exception cref="StartupRefusedException">Its server does not run, or its files cannot be read.</exception>
    public static string RunningConnectionString(string root, string database)
    {
        var folder = new ClusterFolder(root);
        try
        {
            // postmaster.pid: process, data folder, start time, port, first socket folder (PostgreSQL, miscadmin.h).
            var socket = File.ReadLines(folder.ProcessFile).Skip(SocketLine).First();
            return new NpgsqlConnectionStringBuilder
            {
                Host = socket, Database = database, Username = Owner, Password = File.ReadAllText(folder.Password).Trim(),
            }.ConnectionString;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or InvalidOperationException)
        {
            throw new StartupRefusedException($"The PostgreSQL of {root} cannot be reached: {problem.Message}", problem);
        }
    }

    /// <summary>Makes the cluster where there is none, ends what a killed service left running, and starts.</summary>
    /// <exception cref="StartupRefusedException">It cannot; nothing was changed that was there before.</exception>
    public async Task Start(CancellationToken cancellation)
    {
        await Prepare(cancellation);
        if (!File.Exists(folder.VersionFile))
        {
            await Create(cancellation);
        }

        await Launch(cancellation);
    }

    /// <summary>Starts again a cluster that died under a running service.</summary>
    public Task Restart(CancellationToken cancellation) => Launch(cancellation);

    /// <summary>Ends every session, writes everything out and stops. Nothing where it does not run.</summary>
    public async Task Stop()
    {
        if (binaries is not null)
        {
            await new Postmaster(folder, binaries, user).Stop();
            running = null;
        }

        if (temporarySocket is not null)
        {
            Directory.Delete(temporarySocket, recursive: true);
            temporarySocket = null;
        }
    }

    private async Task Prepare(CancellationToken cancellation)
    {
        user = await ClusterUser.Find(cancellation);
        Directory.CreateDirectory(folder.Root);
        Guards.RefuseOddPath(folder.Root);
        await Guards.RefuseClosedWay(folder, user, cancellation);
        binaries = await Guards.ChooseBinaries(folder, user, cancellation);
        foreach (var one in (string[])[folder.Root, folder.Socket, folder.Log])
        {
            Directory.CreateDirectory(one);
            await Private(one);
        }

        if (!ClusterFolder.FitsSocket(folder.Socket) && temporarySocket is null)
        {
            temporarySocket = Directory.CreateTempSubdirectory("toepan-").FullName;
            await user.Own(temporarySocket);
        }

        password = await ReadOrMakePassword();
    }

    private async Task Private(string path)
    {
        await user.Own(path);
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    private async Task<string> ReadOrMakePassword()
    {
        if (!File.Exists(folder.Password))
        {
            if (File.Exists(folder.VersionFile))
            {
                throw new StartupRefusedException($"The cluster in {folder.Data} is there but its password file {folder.Password} is not. Restore it from the backup.");
            }

            PrivateFile.WriteNew(folder.Password, Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(PasswordBytes)));
            await user.Own(folder.Password);
        }

        return (await File.ReadAllTextAsync(folder.Password)).Trim();
    }

    private async Task Create(CancellationToken cancellation)
    {
        if (Directory.Exists(folder.Unfinished))
        {
            Directory.Delete(folder.Unfinished, recursive: true);
        }

        var made = await user.Run(
            [
                binaries["initdb"], "-D", folder.Unfinished, "-U", Owner, "--auth=scram-sha-256", $"--pwfile={folder.Password}",
                "-E", "UTF8", "--locale=C.UTF-8", "--data-checksums", "--no-instructions",
            ],
            cancellation);
        if (!made.Succeeded)
        {
            throw new StartupRefusedException($"PostgreSQL could not make its cluster in {folder.Root}:\n{made.Output}");
        }

        await File.AppendAllTextAsync(Path.Combine(folder.Unfinished, "postgresql.conf"), "\ninclude_if_exists 'toepan.conf'\n", cancellation);
        Directory.Move(folder.Unfinished, folder.Data);
    }

    private async Task Launch(CancellationToken cancellation)
    {
        var postmaster = new Postmaster(folder, binaries, user);
        await postmaster.Stop();
        await postmaster.ClearAway(SocketFolder, cancellation);
        File.Delete(folder.Settings);
        PrivateFile.WriteNew(folder.Settings, ClusterSettings.Text(folder, SocketFolder, settings));
        await user.Own(folder.Settings);
        var started = await postmaster.Start(cancellation);
        if (!started.Succeeded)
        {
            throw new StartupRefusedException($"PostgreSQL did not start in {folder.Root}:\n{started.Output}\n{folder.LastLines(LogLines)}".Trim());
        }

        running = await postmaster.Find();
    }
}
