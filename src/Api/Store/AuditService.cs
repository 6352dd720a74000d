using Microsoft.EntityFrameworkCore;
using Npgsql;
using Toepan.Api.Security;
using Toepan.Api.Store.Tables;

namespace Toepan.Api.Store;

/// <summary>Reads the history. Administrators and managers.</summary>
public sealed class AuditService(IDbContextFactory<ProgrammeDb> contexts, NpgsqlDataSource source)
{
    public const int PageSize = 50;
    private const int LargestPage = 500;

    /// <param name="viewer">Who asks.</param>
    /// <param name="filter">Which entries.</param>
    /// <param name="before">Only entries of a lower number; null = from the latest.</param>
    /// <param name="size">How many, 1 to 500.</param>
    /// <param name="cancellation">Stops.</param>
    public async Task<Outcome<AuditPage>> List(
        Viewer viewer, AuditFilter filter, long? before, int size = PageSize, CancellationToken cancellation = default)
    {
        if (Refusal(viewer) is { } refusal)
        {
            return refusal;
        }

        if (size is < 1 or > LargestPage)
        {
            return Failure.BadRequest($"size is {size}; it is 1 to {LargestPage}.");
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var rows = await Matching(db, filter).Where(row => before == null || row.Sequence < before)
            .OrderByDescending(row => row.Sequence).Take(size + 1).ToListAsync(cancellation);
        var page = rows.Take(size).Select(Entry).ToArray();
        return new AuditPage(page, rows.Count > size ? page[^1].Sequence : null);
    }

    /// <summary>Entries in the order they were written, one at a time from the database.</summary>
    public Outcome<IAsyncEnumerable<AuditEntry>> Export(Viewer viewer, AuditFilter filter, CancellationToken cancellation = default) =>
        Refusal(viewer) is { } refusal ? refusal : new Outcome<IAsyncEnumerable<AuditEntry>>(Stream(filter, cancellation), null);

    /// <summary>Everybody and every action there is in the history.</summary>
    public async Task<Outcome<AuditWords>> Words(Viewer viewer, CancellationToken cancellation = default)
    {
        if (Refusal(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var who = await db.Set<AuditRow>().Select(row => row.Who).Distinct().ToListAsync(cancellation);
        var actions = await db.Set<AuditRow>().Select(row => row.Action).Distinct().ToListAsync(cancellation);
        return new AuditWords([.. who.Order(StringComparer.OrdinalIgnoreCase)], [.. actions.Order(StringComparer.Ordinal)]);
    }

    /// <summary>Walks the whole chain.</summary>
    public async Task<Outcome<AuditVerification>> Verify(Viewer viewer, CancellationToken cancellation = default)
    {
        if (Refusal(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var connection = await source.OpenConnectionAsync(cancellation);
        return await AuditChain.Verify(connection, [], cancellation);
    }

    private async IAsyncEnumerable<AuditEntry> Stream(AuditFilter filter, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        await foreach (var row in Matching(db, filter).OrderBy(row => row.Sequence).AsAsyncEnumerable().WithCancellation(cancellation))
        {
            yield return Entry(row);
        }
    }

    private static IQueryable<AuditRow> Matching(ProgrammeDb db, AuditFilter filter)
    {
        var (from, to) = (filter.From?.ToUniversalTime(), filter.To?.ToUniversalTime());
        return db.Set<AuditRow>().AsNoTracking().Where(row =>
            (filter.Who == null || row.Who == filter.Who)
            && (filter.Action == null || row.Action == filter.Action)
            && (filter.Entity == null || row.Entity.StartsWith(filter.Entity))
            && (from == null || row.At >= from) && (to == null || row.At < to));
    }

    private static Failure? Refusal(Viewer viewer) => viewer.Is(Role.Administrator, Role.Manager) ? null : Failure.Forbidden("read the history");

    private static AuditEntry Entry(AuditRow row) => new(
        row.Sequence, row.At, row.Who, row.Action, row.Entity, row.Before, row.After,
        Convert.ToHexStringLower(row.PreviousHash), Convert.ToHexStringLower(row.Hash));
}
