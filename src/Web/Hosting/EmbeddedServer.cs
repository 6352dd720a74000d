using Toepan.Api.Store;
using Toepan.Web.Hosting.Cluster;

namespace Toepan.Web.Hosting;

/// <summary>The store's private PostgreSQL: started with the service, started again when it dies, stopped with the service.</summary>
public sealed class EmbeddedServer(DataFolder folder) : IStoreServer
{
    public const string Database = "toepan";
    private readonly PrivateCluster cluster = new(folder.Cluster);
    private readonly SemaphoreSlim turn = new(1);
    private StoreConnections? connections;
    private bool stopped;

    public StoreConnections Connections => connections ?? throw new InvalidOperationException("The private cluster has not been started.");

    public async Task Start(CancellationToken cancellation)
    {
        await turn.WaitAsync(cancellation);
        try
        {
            await cluster.Start(cancellation);
            connections = StoreConnections.FromOwner(cluster.ConnectionString(Database));
        }
        finally
        {
            turn.Release();
        }
    }

    /// <summary>Starts the cluster again where its server has died. True where it had.</summary>
    /// <exception cref="StartupRefusedException">It does not start.</exception>
    public async Task<bool> Revive(CancellationToken cancellation)
    {
        await turn.WaitAsync(cancellation);
        try
        {
            if (stopped || cluster.Alive)
            {
                return false;
            }

            await cluster.Restart(cancellation);
            return true;
        }
        finally
        {
            turn.Release();
        }
    }

    public async Task Stop()
    {
        await turn.WaitAsync();
        try
        {
            stopped = true;
            await cluster.Stop();
        }
        finally
        {
            turn.Release();
        }
    }

    /// <summary>Also where the start was refused half-way. May be called again.</summary>
    public async ValueTask DisposeAsync() => await Stop();
}
