using System.Diagnostics;

namespace Toepan.Api.Tests.Independent;

/// <summary>The second opinion under tests/reference/independent: Python 3 with scipy (Debian's python3-scipy), sharing nothing with src/.</summary>
internal static class Script
{
    private const string Python = "/usr/bin/python3";

    /// <summary>Runs a script of the folder to its end; its exit code and everything it wrote.</summary>
    public static async Task<(int ExitCode, string Output)> Run(string name, IEnumerable<string> arguments, CancellationToken cancel)
    {
        var start = new ProcessStartInfo(Python, [Path.Combine(Folder(), name), .. arguments]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["PYTHONDONTWRITEBYTECODE"] = "1";
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{Python} did not start.");
        var output = process.StandardOutput.ReadToEndAsync(cancel);
        var errors = process.StandardError.ReadToEndAsync(cancel);
        await process.WaitForExitAsync(cancel);
        return (process.ExitCode, await output + await errors);
    }

    private static string Folder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Program.sln")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository."), "tests", "reference", "independent");
    }
}
