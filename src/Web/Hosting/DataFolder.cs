using System.Globalization;
using Toepan.Api.Store;

namespace Toepan.Web.Hosting;

/// <summary>
/// The folder that holds all the service keeps outside a database: the private cluster, first-run.json and the lock that keeps a second
/// service out. The lock ends with the process, however it ends.
/// </summary>
public sealed class DataFolder : IDisposable
{
    public const string Default = "data";
    public const string ClusterName = "cluster";
    private const string LockName = "service.lock";

    /// <summary>Beside the lock, since a locked file cannot be read by the one it keeps out.</summary>
    private const string HolderName = "service.pid";
    private readonly FileStream held;

    private DataFolder(string path, FileStream held) => (Path, this.held) = (path, held);

    /// <summary>Absolute path without symbolic links.</summary>
    public string Path { get; }

    public string FirstRunFile => System.IO.Path.Combine(Path, "first-run.json");

    /// <summary>How an analyst's programs reach the database, mode 0600.</summary>
    public string AnalystFile => System.IO.Path.Combine(Path, "analyst.json");

    public string Cluster => System.IO.Path.Combine(Path, ClusterName);

    /// <summary>Makes the folder where there is none and locks it.</summary>
    /// <exception cref="StartupRefusedException">Another service uses it, or it cannot be written.</exception>
    public static DataFolder Open(string path)
    {
        try
        {
            var absolute = Real(Directory.CreateDirectory(System.IO.Path.GetFullPath(path)));
            return new(absolute, Lock(absolute));
        }
        catch (UnauthorizedAccessException problem)
        {
            throw new StartupRefusedException($"The data folder cannot be written: {problem.Message} Choose another (--data DIR) or change its owner.", problem);
        }
    }

    /// <summary>The folder, locked; null where a service that runs holds it.</summary>
    public static DataFolder? OpenUnlessHeld(string path)
    {
        try
        {
            return Open(path);
        }
        catch (StartupRefusedException refusal) when (refusal.InnerException is IOException)
        {
            return null;
        }
    }

    public void Dispose() => held.Dispose();

    /// <summary>The path with every symbolic link on the way followed, as PostgreSQL's own process sees it.</summary>
    private static string Real(DirectoryInfo folder)
    {
        if (folder.ResolveLinkTarget(returnFinalTarget: true) is DirectoryInfo target)
        {
            return Real(target);
        }

        return folder.Parent is { } parent ? System.IO.Path.Combine(Real(parent), folder.Name) : folder.FullName;
    }

    private static FileStream Lock(string folder)
    {
        var file = System.IO.Path.Combine(folder, LockName);
        try
        {
            var stream = new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            File.WriteAllText(System.IO.Path.Combine(folder, HolderName), Environment.ProcessId.ToString(CultureInfo.InvariantCulture));
            return stream;
        }
        catch (IOException problem) when (File.Exists(file))
        {
            throw new StartupRefusedException(
                $"Another service uses the data folder {folder}{Holder(folder)}. Stop it first, or give this one a folder of its own: --data DIR", problem);
        }
    }

    private static string Holder(string folder)
    {
        var file = System.IO.Path.Combine(folder, HolderName);
        return File.Exists(file) ? $" (process {File.ReadAllText(file)})" : "";
    }
}
