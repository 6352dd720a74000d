using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Toepan.Api.Store;

namespace Toepan.Api.Packages;

/// <summary>One writer a test code at a time.</summary>
internal static class RunLock
{
    /// <summary>Opens a transaction that holds the advisory lock of the test code until it ends.</summary>
    public static async Task<IDbContextTransaction> Begin(ProgrammeDb context, string test, CancellationToken cancellation)
    {
        var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await Take(context, test, cancellation);
        return transaction;
    }

    /// <summary>Takes the lock in the transaction that is open. Whoever takes several takes them in the order of the codes.</summary>
    public static async Task Take(ProgrammeDb context, string test, CancellationToken cancellation)
    {
        var key = $"test/{test}";
        await context.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock(hashtextextended({key}, 0))", cancellation);
    }
}
