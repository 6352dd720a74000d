using Toepan.Api.Store;

namespace Toepan.Web.Hosting.Cluster;

/// <summary>
/// The OS user PostgreSQL runs as, since it refuses to run as root: <c>postgres</c> where the service is root (through setpriv, without
/// capabilities), else the service's own user.
/// </summary>
internal sealed class ClusterUser
{
    private const string Dedicated = "postgres";
    private readonly string? name;

    private ClusterUser(string? name) => this.name = name;

    /// <summary>Name of the other user, or null where it is the service's own.</summary>
    public string? Name => name;

    public static async Task<ClusterUser> Find(CancellationToken cancellation)
    {
        if (!Environment.IsPrivilegedProcess)
        {
            return new(null);
        }

        var known = await Command.Run(["id", "-u", Dedicated], cancellation);
        return known.Succeeded
            ? new(Dedicated)
            : throw new StartupRefusedException(
                "PostgreSQL does not run as root and there is no OS user 'postgres'. Install PostgreSQL's packages (apt-get install postgresql), or start as an ordinary user.");
    }

    public Task<CommandResult> Run(IReadOnlyList<string> words, CancellationToken cancellation = default) => Command.Run([.. Prefix(), .. words], cancellation);

    /// <summary>Gives folders or files to this user.</summary>
    public async Task Own(params string[] paths)
    {
        if (name is not null)
        {
            await Command.Run(["chown", "-h", $"{name}:", .. paths]);
        }
    }

    /// <summary>The first folder on the way to <paramref name="folder"/>, itself included, that this user may not pass through; null where all is well.</summary>
    public async Task<string?> FirstClosed(string folder, CancellationToken cancellation)
    {
        var way = new Stack<string>();
        for (var at = new DirectoryInfo(folder); at is not null; at = at.Parent)
        {
            way.Push(at.FullName);
        }

        var answer = await Run(["sh", "-c", "for d in \"$@\"; do [ -x \"$d\" ] || { printf '%s' \"$d\"; exit 1; }; done", "sh", .. way], cancellation);
        return answer.Succeeded ? null : answer.Output;
    }

    private string[] Prefix() => name is null ? [] : ["setpriv", $"--reuid={name}", $"--regid={name}", "--init-groups", "--inh-caps=-all"];
}
