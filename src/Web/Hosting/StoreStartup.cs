using Toepan.Api.Store;

namespace Toepan.Web.Hosting;

/// <summary>
/// Registered first: the server starts, the store is brought up to date and first-run.json and analyst.json are written before anything listens, and the
/// server stops after everything that uses it.
/// </summary>
internal sealed class StoreStartup(IStoreServer server, IServiceScopeFactory scopes, DataFolder folder, IConfiguration configuration) : IHostedService
{
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        await server.Start(cancellationToken);
        await new StorePreparation(server.Connections).Run(cancellationToken);
        AnalystFile.Write(folder.AnalystFile, server.Connections);
        await using var scope = scopes.CreateAsyncScope();
        var first = await scope.ServiceProvider.GetRequiredService<FirstRun>().Run(folder.FirstRunFile, Addresses.Base(configuration), cancellationToken);
        if (first)
        {
            Console.WriteLine($"The first sign-in is in {folder.FirstRunFile}");
        }
    }

    public Task StopAsync(CancellationToken cancellationToken) => server.Stop();
}
