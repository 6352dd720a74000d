using System.Data.Common;
using Npgsql;

namespace Toepan.Api.Store;

/// <summary>Whether the database answers now.</summary>
public sealed class StoreHealth(NpgsqlDataSource source)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    /// <summary>True when a query over the service's login comes back within 3 s.</summary>
    public async Task<bool> Answers(CancellationToken cancellation = default)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(Patience);
        try
        {
            await using var command = source.CreateCommand("SELECT 1");
            await command.ExecuteScalarAsync(limit.Token);
            return true;
        }
        catch (DbException)
        {
            return false;
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return false;
        }
    }
}
