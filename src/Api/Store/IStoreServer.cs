namespace Toepan.Api.Store;

/// <summary>The PostgreSQL behind the store: a private cluster of this service, or a server somebody else runs.</summary>
public interface IStoreServer : IAsyncDisposable
{
    /// <summary>How to reach it. Throws before <see cref="Start"/> has returned.</summary>
    StoreConnections Connections { get; }

    /// <summary>Makes it answer.</summary>
    /// <exception cref="StartupRefusedException">It cannot; the message says what to do.</exception>
    Task Start(CancellationToken cancellation);

    /// <summary>Stops what <see cref="Start"/> started; nothing where it started nothing.</summary>
    Task Stop();
}
