using System.Text.Encodings.Web;
using System.Text.Json;
using Npgsql;
using Toepan.Api.Store;

namespace Toepan.Web.Hosting;

/// <summary>What analyst.json says: how a notebook, R or a BI tool reaches the views of schema <c>analysis</c>; docs/analysis.md shows how.</summary>
/// <param name="Host">Host name, or the folder of the socket: then only this machine reaches it, as root or as the cluster's user.</param>
/// <param name="Psql">The whole address for psql and libpq.</param>
internal sealed record AnalystFile(string Host, int Port, string Database, string User, string Password, string Psql)
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes the file anew, mode 0600, where it says something else; removes it where there is no such login.</summary>
    public static void Write(string path, StoreConnections connections)
    {
        if (connections.Analyst is null)
        {
            File.Delete(path);
            return;
        }

        var text = JsonSerializer.Serialize(Of(new NpgsqlConnectionStringBuilder(connections.Analyst)), Json) + "\n";
        if (File.Exists(path) && File.ReadAllText(path) == text)
        {
            return;
        }

        var half = path + ".half";
        File.Delete(half);
        Cluster.PrivateFile.WriteNew(half, text);
        File.Move(half, path, overwrite: true);
    }

    private static AnalystFile Of(NpgsqlConnectionStringBuilder login) => new(
        login.Host!, login.Port, login.Database!, login.Username!, login.Password ?? "",
        $"psql 'host={login.Host} port={login.Port} dbname={login.Database} user={login.Username} password={login.Password}'");
}
