using Microsoft.AspNetCore.Connections;
using Toepan.Api.Store;

namespace Toepan.Web.Hosting;

/// <summary>Builds and runs the service; refusals to start become one clear message and exit code 1.</summary>
internal static class ToepanHost
{
    private const string HostCategory = "Microsoft.Extensions.Hosting.Internal.Host";

    public static async Task<int> Run(string[] args)
    {
        if (args is [AuditCommand.Name, ..])
        {
            return await AuditCommand.Run(args[1..], Console.Out, Console.Error);
        }

        // Settings and pages lie beside the program, wherever it is started from.
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseStaticWebAssets();
        if (!Addresses.Given(builder.Configuration))
        {
            builder.Configuration["urls"] = Addresses.Default;
        }

        // The message of a refusal is printed below; its stack trace helps nobody.
        builder.Logging.AddFilter(HostCategory, LogLevel.None);
        builder.AddToepan();
        await using var app = builder.Build();
        app.UseToepan();
        app.MapToepan();
        return await Serve(app);
    }

    private static async Task<int> Serve(WebApplication app)
    {
        try
        {
            await app.RunAsync();
            return Environment.ExitCode;
        }
        catch (StartupRefusedException refusal)
        {
            await Console.Error.WriteLineAsync(refusal.Message);
        }
        catch (IOException taken) when (taken.InnerException is AddressInUseException)
        {
            await Console.Error.WriteLineAsync($"{taken.Message} Stop what listens there, or choose another address: --urls http://127.0.0.1:PORT");
        }
        catch (OperationCanceledException)
        {
            await Console.Error.WriteLineAsync("Stopped while starting.");
        }

        return 1;
    }
}
