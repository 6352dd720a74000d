using System.Globalization;

namespace Toepan.Web.Hosting.Cluster;

/// <summary>One installed PostgreSQL.</summary>
/// <param name="Folder">Where initdb, postgres and pg_ctl are.</param>
/// <param name="Major">Major version.</param>
internal sealed record PostgresBinaries(string Folder, int Major)
{
    /// <summary>Least version with everything the store uses.</summary>
    public const int LeastMajor = 14;

    private const string DebianRoot = "/usr/lib/postgresql";
    private static readonly string[] Needed = ["initdb", "pg_ctl", "postgres"];

    public string this[string program] => Path.Combine(Folder, program);

    /// <summary>Every installation found: Debian's folders, then the search path; highest version first.</summary>
    public static async Task<IReadOnlyList<PostgresBinaries>> Find(CancellationToken cancellation)
    {
        var debian = Directory.Exists(DebianRoot) ? Directory.EnumerateDirectories(DebianRoot).Select(version => Path.Combine(version, "bin")) : [];
        var path = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        var found = new List<PostgresBinaries>();
        foreach (var folder in debian.Concat(path).Where(folder => Array.TrueForAll(Needed, program => File.Exists(Path.Combine(folder, program)))))
        {
            if (await Version(folder, cancellation) is { } major && found.TrueForAll(other => other.Major != major))
            {
                found.Add(new(folder, major));
            }
        }

        return [.. found.OrderByDescending(one => one.Major)];
    }

    /// <summary>Reads "postgres (PostgreSQL) 15.18 (Debian …)".</summary>
    private static async Task<int?> Version(string folder, CancellationToken cancellation)
    {
        var answer = await Command.Run([Path.Combine(folder, "postgres"), "--version"], cancellation);
        var words = answer.Output.Split(' ');
        var major = words.Length > 2 ? words[2].Split('.')[0] : "";
        return int.TryParse(major, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= LeastMajor ? number : null;
    }
}
