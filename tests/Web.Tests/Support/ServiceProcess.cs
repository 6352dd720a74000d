using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Reflection;
using System.Text;
using System.Text.Json;

namespace Toepan.Web.Tests.Support;

/// <summary>The service itself, as its own process on its own database cluster in a folder of its own; gone without trace afterwards.</summary>
public sealed class ServiceProcess : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);
    private readonly Process _process;
    private readonly string _folder;
    private readonly StringBuilder _output;

    private ServiceProcess(Process process, string folder, StringBuilder output, Uri address, FirstRun secrets)
    {
        (_process, _folder, _output) = (process, folder, output);
        (Address, Secrets) = (address, secrets);
    }

    /// <summary>What the first start wrote down.</summary>
    public sealed record FirstRun(string Name, string Password, string IngestToken);

    public Uri Address { get; }

    public FirstRun Secrets { get; }

    public static async Task<ServiceProcess> Start()
    {
        // Every parent of the cluster's folder must be open to the user it runs as.
        var folder = Directory.CreateDirectory(Path.Combine(Path.GetTempPath(), $"toepan-web-tests-{Guid.NewGuid():N}")).FullName;
        File.SetUnixFileMode(folder, (UnixFileMode)Convert.ToInt32("755", 8));
        var data = Path.Combine(folder, "data");
        var address = new Uri(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{FreePort()}"));
        var output = new StringBuilder();
        var process = Launch(data, address, output);
        try
        {
            await UntilHealthy(process, address, output);
            return new ServiceProcess(process, folder, output, address, await ReadSecrets(Path.Combine(data, "first-run.json")));
        }
        catch
        {
            process.Kill(entireProcessTree: true);
            throw;
        }
    }

    public async ValueTask DisposeAsync()
    {
        using (var stop = Process.Start("kill", ["-TERM", _process.Id.ToString(CultureInfo.InvariantCulture)]))
        {
            await stop.WaitForExitAsync();
        }

        if (!_process.WaitForExit(TimeSpan.FromSeconds(30)))
        {
            _process.Kill(entireProcessTree: true);
            throw new InvalidOperationException($"The service did not stop within 30 s of SIGTERM:\n{_output}");
        }

        _process.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private static Process Launch(string data, Uri address, StringBuilder output)
    {
        var assembly = typeof(ServiceProcess).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "ServiceAssembly").Value!;
        var start = new ProcessStartInfo("dotnet", [assembly, "--urls", address.ToString().TrimEnd('/'), "--data", data])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment.Remove("ConnectionStrings__Programme");
        var process = Process.Start(start)!;
        process.OutputDataReceived += (_, line) => Keep(output, line.Data);
        process.ErrorDataReceived += (_, line) => Keep(output, line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        return process;
    }

    private static void Keep(StringBuilder output, string? line)
    {
        lock (output)
        {
            output.AppendLine(line);
        }
    }

    private static async Task UntilHealthy(Process process, Uri address, StringBuilder output)
    {
        using var client = new HttpClient { BaseAddress = address };
        for (var waited = Stopwatch.StartNew(); waited.Elapsed < Patience; await Task.Delay(250))
        {
            if (process.HasExited)
            {
                throw new InvalidOperationException($"The service ended with {process.ExitCode} while starting:\n{output}");
            }

            try
            {
                if ((await client.GetAsync(new Uri("/health", UriKind.Relative))).IsSuccessStatusCode)
                {
                    return;
                }
            }
            catch (HttpRequestException refused) when (refused.HttpRequestError == HttpRequestError.ConnectionError)
            {
                // Not listening yet.
            }
        }

        throw new TimeoutException($"The service was not healthy within {Patience}:\n{output}");
    }

    private static async Task<FirstRun> ReadSecrets(string file)
    {
        using var document = JsonDocument.Parse(await File.ReadAllTextAsync(file));
        var administrator = document.RootElement.GetProperty("administrator");
        return new FirstRun(
            administrator.GetProperty("name").GetString()!, administrator.GetProperty("password").GetString()!,
            document.RootElement.GetProperty("ingestToken").GetString()!);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
