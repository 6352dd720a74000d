using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Toepan.Api.Store;

namespace Toepan.Api.Packages.Attachments;

/// <summary>One writer at a time of what is said of one attachment, and of what a run or specimen has attached.</summary>
internal static class AttachmentLock
{
    /// <summary>Opens a transaction that holds the lock of an attachment until it ends.</summary>
    public static async Task<IDbContextTransaction> Begin(ProgrammeDb context, long id, CancellationToken cancellation)
    {
        var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await Take(context, $"attachment/{id}", cancellation);
        return transaction;
    }

    /// <summary>Takes the lock of a run's or specimen's attachments in the running transaction.</summary>
    public static Task Take(ProgrammeDb context, AttachmentSubject subject, CancellationToken cancellation) =>
        Take(context, $"attachments/{subject.Key}", cancellation);

    private static Task<int> Take(ProgrammeDb context, string key, CancellationToken cancellation) =>
        context.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock(hashtextextended({key}, 0))", cancellation);
}
