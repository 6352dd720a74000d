namespace Toepan.Web.Hosting;

/// <summary>Where the service listens and how it is reached.</summary>
internal static class Addresses
{
    public const string Default = "http://127.0.0.1:5080";
    private static readonly string[] Keys = ["urls", "http_ports", "https_ports"];
    private static readonly string[] Everywhere = ["*", "+", "0.0.0.0", "[::]"];

    /// <summary>Whether the person or the environment said where to listen.</summary>
    public static bool Given(IConfiguration configuration) =>
        Array.Exists(Keys, key => !string.IsNullOrEmpty(configuration[key])) || configuration.GetSection("Kestrel:Endpoints").Exists();

    /// <summary><c>BaseUrl</c> where configured (behind a proxy), else the first listening address with the loopback address in place of "everywhere".</summary>
    public static string Base(IConfiguration configuration)
    {
        if (configuration["BaseUrl"] is { Length: > 0 } configured)
        {
            return configured.TrimEnd('/');
        }

        var first = (configuration["urls"] ?? Default).Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).FirstOrDefault() ?? Default;
        foreach (var wildcard in Everywhere)
        {
            first = first.Replace($"://{wildcard}", "://127.0.0.1", StringComparison.Ordinal);
        }

        return first.TrimEnd('/');
    }
}
