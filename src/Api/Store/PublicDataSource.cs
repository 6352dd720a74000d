using Npgsql;

namespace Toepan.Api.Store;

/// <summary>The connections of public routes: their login sees released rows of <c>pub</c> and nothing else.</summary>
public sealed class PublicDataSource(NpgsqlDataSource source) : IAsyncDisposable
{
    public NpgsqlDataSource Source => source;

    public ValueTask DisposeAsync() => source.DisposeAsync();
}
