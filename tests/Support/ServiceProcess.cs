using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace Toepan.Support;

/// <summary>The built service as a process of its own, to be stopped and killed.</summary>
public sealed class ServiceProcess : IDisposable
{
    private static readonly TimeSpan StartPatience = TimeSpan.FromSeconds(90);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);
    private readonly Process process;
    private readonly ConcurrentQueue<string> lines = new();

    private ServiceProcess(Process process, Uri address)
    {
        (this.process, Address) = (process, address);
        process.OutputDataReceived += (_, line) => lines.Enqueue(line.Data ?? "");
        process.ErrorDataReceived += (_, line) => lines.Enqueue(line.Data ?? "");
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        Client = new HttpClient { BaseAddress = address, Timeout = TimeSpan.FromSeconds(10) };
    }

    public Uri Address { get; }

    public HttpClient Client { get; }

    public int Id => process.Id;

    public string Output => string.Join('\n', lines);

    /// <summary>Starts the service over a data folder and waits for nothing.</summary>
    public static ServiceProcess Launch(string dataFolder, params string[] arguments)
    {
        var address = new Uri(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{FreePort()}"));
        var program = Path.Combine(AppContext.BaseDirectory, "Toepan.Web.dll");
        var start = new ProcessStartInfo("dotnet", [program, "--data", dataFolder, "--urls", address.ToString().TrimEnd('/'), .. arguments])
        {
            RedirectStandardOutput = true, RedirectStandardError = true,
        };
        start.Environment.Remove("ConnectionStrings__Programme");
        return new(Process.Start(start)!, address);
    }

    /// <summary>Starts the service and waits until it is healthy.</summary>
    public static async Task<ServiceProcess> Start(string dataFolder)
    {
        var service = Launch(dataFolder);
        await service.WaitForHealth(HttpStatusCode.OK);
        return service;
    }

    /// <summary>Waits until /health answers so; fails where the service ends or takes too long.</summary>
    public async Task WaitForHealth(HttpStatusCode wanted)
    {
        var clock = Stopwatch.StartNew();
        while (await Health() != wanted)
        {
            if (process.HasExited || clock.Elapsed > StartPatience)
            {
                throw new InvalidOperationException($"No health {wanted} within {clock.Elapsed}; it wrote:\n{Output}");
            }

            await Task.Delay(Pause);
        }
    }

    /// <summary>What /health answers now; null where nothing listens.</summary>
    public async Task<HttpStatusCode?> Health()
    {
        try
        {
            using var answer = await Client.GetAsync("/health");
            return answer.StatusCode;
        }
        catch (HttpRequestException)
        {
            return null;
        }
    }

    /// <summary>Waits for the end; its exit code.</summary>
    public async Task<int> WaitForExit()
    {
        using var patience = new CancellationTokenSource(StartPatience);
        await process.WaitForExitAsync(patience.Token);
        return process.ExitCode;
    }

    /// <summary>Sends a signal by its name, e.g. TERM.</summary>
    public void Signal(string name) => Signals.Send(name, process.Id);

    public void Dispose()
    {
        if (!process.HasExited)
        {
            Signal("TERM");
            if (!process.WaitForExit(StartPatience))
            {
                process.Kill();
            }
        }

        process.Dispose();
        Client.Dispose();
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
