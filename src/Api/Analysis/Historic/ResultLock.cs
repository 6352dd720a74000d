using Microsoft.EntityFrameworkCore;
using Toepan.Api.Store;

namespace Toepan.Api.Analysis.Historic;

/// <summary>
/// Historic results are taken in one file at a time, and while no package is: a test code is either a run or a summary. Locks are of the transaction.
/// </summary>
internal static class ResultLock
{
    private const string Key = "historic results";

    /// <summary>For whoever writes historic results.</summary>
    public static Task Exclusive(ProgrammeDb context, CancellationToken cancellation) =>
        context.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock(hashtextextended({Key}, 0))", cancellation);

    /// <summary>For whoever makes a run of a test code.</summary>
    public static Task Shared(ProgrammeDb context, CancellationToken cancellation) =>
        context.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock_shared(hashtextextended({Key}, 0))", cancellation);
}
