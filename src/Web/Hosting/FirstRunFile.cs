using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text.Encodings.Web;
using System.Text.Json;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Web.Hosting;

/// <summary>The person who may sign in first.</summary>
internal sealed record FirstAdministrator(string Name, string Password);

/// <summary>What first-run.json says.</summary>
internal sealed record FirstRunFile(string BaseUrl, FirstAdministrator Administrator, string IngestToken)
{
    private const int PasswordBytes = 18;

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static FirstRunFile New(string baseUrl) => new(
        baseUrl, new("administrator", Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(PasswordBytes))), TokenSecret.New());

    /// <summary>
    /// What an earlier start wrote where there is such a file, else a new one, written whole or not at all, mode 0600. A file found is never
    /// changed: a first start that was killed after writing it goes on with the same secrets.
    /// </summary>
    /// <exception cref="StartupRefusedException">There is a file, but not one of these.</exception>
    public static FirstRunFile ReadOrWrite(string path, string baseUrl)
    {
        if (File.Exists(path))
        {
            return Read(path);
        }

        var made = New(baseUrl);
        var half = path + ".half";
        File.Delete(half);
        Cluster.PrivateFile.WriteNew(half, JsonSerializer.Serialize(made, Json) + "\n");
        File.Move(half, path, overwrite: false);
        return made;
    }

    private static FirstRunFile Read(string path)
    {
        try
        {
            if (JsonSerializer.Deserialize<FirstRunFile>(File.ReadAllBytes(path), Json) is
                { BaseUrl: not null, Administrator: { Name: not null, Password: not null }, IngestToken: not null } read)
            {
                return read;
            }
        }
        catch (JsonException problem)
        {
            throw Unreadable(path, problem);
        }

        throw Unreadable(path, null);
    }

    private static StartupRefusedException Unreadable(string path, Exception? problem) => new(
        $"The database holds no account, and {path} is there but cannot be read as the first sign-in. Move it away and start again.", problem!);
}
