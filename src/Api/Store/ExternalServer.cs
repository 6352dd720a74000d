namespace Toepan.Api.Store;

/// <summary>A PostgreSQL that somebody else runs; nothing is started or stopped.</summary>
public sealed class ExternalServer(StoreConnections connections) : IStoreServer
{
    public StoreConnections Connections => connections;

    public Task Start(CancellationToken cancellation) => Task.CompletedTask;

    public Task Stop() => Task.CompletedTask;

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
