using System.Text.Json;

namespace Toepan.Web.Tests.Support;

/// <summary>What the first start of the service wrote down: who may sign in, and the token that uploads.</summary>
public sealed record FirstRun(string Name, string Password, string IngestToken)
{
    public static async Task<FirstRun> Read(string file)
    {
        using var document = JsonDocument.Parse(await File.ReadAllTextAsync(file));
        var administrator = document.RootElement.GetProperty("administrator");
        return new FirstRun(
            administrator.GetProperty("name").GetString()!, administrator.GetProperty("password").GetString()!,
            document.RootElement.GetProperty("ingestToken").GetString()!);
    }
}
