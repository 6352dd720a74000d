using System.Diagnostics;

namespace Toepan.Web.Hosting.Cluster;

/// <summary>What a command printed (both streams) and its exit code.</summary>
internal sealed record CommandResult(int ExitCode, string Output)
{
    public bool Succeeded => ExitCode == 0;
}

/// <summary>Runs a short command of the system and waits for it.</summary>
internal static class Command
{
    /// <summary>Variables by which a person's own PostgreSQL settings would leak into the private cluster.</summary>
    private const string PostgresVariables = "PG";

    public static async Task<CommandResult> Run(IReadOnlyList<string> words, CancellationToken cancellation = default)
    {
        var start = new ProcessStartInfo(words[0], words.Skip(1))
        {
            RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true, WorkingDirectory = "/",
        };
        foreach (var name in start.Environment.Keys.Where(key => key.StartsWith(PostgresVariables, StringComparison.Ordinal)).ToArray())
        {
            start.Environment.Remove(name);
        }

        start.Environment["LC_ALL"] = "C";
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync(cancellation);
        var errors = process.StandardError.ReadToEndAsync(cancellation);
        await process.WaitForExitAsync(cancellation);
        return new(process.ExitCode, (await output + await errors).Trim());
    }
}
