using System.Globalization;
using Npgsql;
using Toepan.Api.Store;
using Toepan.Web.Hosting.Cluster;

namespace Toepan.Web.Hosting;

/// <summary>
/// <c>verify-audit [--data DIR] [--expect NUMBER:HASH]… [--ConnectionStrings:Programme …]</c>: walks the history of the database the service
/// uses, running or not, and says whether its chain is whole. Exit code 0 = whole, 1 = broken, 2 = could not be looked at.
/// </summary>
internal static class AuditCommand
{
    public const string Name = "verify-audit";
    private const string Expect = "--expect";
    private const int Whole = 0;
    private const int Broken = 1;
    private const int NotSeen = 2;

    public static async Task<int> Run(string[] args, TextWriter output, TextWriter errors)
    {
        try
        {
            var (expected, rest) = Expected(args);
            var configuration = new ConfigurationBuilder().AddEnvironmentVariables().AddCommandLine(rest).Build();
            var folder = Path.GetFullPath(configuration["data"] is { Length: > 0 } given ? given : DataFolder.Default);
            IReadOnlyCollection<AuditAnchor> anchors = [.. expected, .. AuditAnchors.Read(folder)];
            return await Connected(configuration, folder, connection => Report(connection, anchors, output));
        }
        catch (StartupRefusedException refusal)
        {
            await errors.WriteLineAsync(refusal.Message);
        }
        catch (NpgsqlException problem)
        {
            await errors.WriteLineAsync($"The history cannot be read: {problem.Message}");
        }

        return NotSeen;
    }

    private static async Task<int> Report(string connectionString, IReadOnlyCollection<AuditAnchor> anchors, TextWriter output)
    {
        await using var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false }.ConnectionString);
        await connection.OpenAsync();
        var found = await AuditChain.Verify(connection, anchors);
        await output.WriteLineAsync(Sentence(found, anchors.Count));
        return found.Break is null ? Whole : Broken;
    }

    private static string Sentence(AuditVerification found, int anchors) => found switch
    {
        { Break: { } broken } => string.Create(CultureInfo.InvariantCulture, $"The history is broken at entry {broken.Sequence}: {broken.What}. {found.Entries} entries were read."),
        { Head: null } => "The history has no entries.",
        { Head: { } head } => string.Create(
            CultureInfo.InvariantCulture,
            $"The history is whole: {found.Entries} entries, held against {anchors} noted earlier. Keep this to notice a cut-off end: {head}"),
    };

    /// <summary>The server named by the configuration, the private cluster that runs, or the one started for as long as it takes.</summary>
    private static async Task<int> Connected(IConfiguration configuration, string folder, Func<string, Task<int>> look)
    {
        if (configuration.GetConnectionString("Programme") is { Length: > 0 } owner)
        {
            return await look(configuration.GetConnectionString("ProgrammeService") is { Length: > 0 } service ? service : owner);
        }

        var root = Path.Combine(folder, DataFolder.ClusterName);
        if (!PrivateCluster.Exists(root))
        {
            throw new StartupRefusedException($"There is no cluster in {folder}. Name the data folder (--data DIR), or the server (ConnectionStrings__Programme).");
        }

        using var held = DataFolder.OpenUnlessHeld(folder);
        if (held is null)
        {
            return await look(PrivateCluster.RunningConnectionString(root, EmbeddedServer.Database));
        }

        var cluster = new PrivateCluster(root);
        await cluster.Start(CancellationToken.None);
        try
        {
            return await look(cluster.ConnectionString(EmbeddedServer.Database));
        }
        finally
        {
            await cluster.Stop();
        }
    }

    private static (IReadOnlyList<AuditAnchor> Expected, string[] Others) Expected(string[] args)
    {
        var (expected, rest) = (new List<AuditAnchor>(), new List<string>());
        for (var i = 0; i < args.Length; i++)
        {
            if (args[i] != Expect)
            {
                rest.Add(args[i]);
            }
            else if (++i < args.Length && AuditAnchor.Parse(args[i]) is { } anchor)
            {
                expected.Add(anchor);
            }
            else
            {
                throw new StartupRefusedException($"{Expect} takes NUMBER:HASH as this command printed it.");
            }
        }

        return (expected, [.. rest]);
    }
}
