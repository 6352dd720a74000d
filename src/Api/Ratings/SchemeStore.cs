using System.Collections.Concurrent;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Programme;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Measures;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings;

/// <summary>A scheme with the hash of its document.</summary>
internal sealed record StoredScheme(string Sha256, Scheme Scheme)
{
    public bool Equals(StoredScheme? other) => other?.Sha256 == Sha256;

    public override int GetHashCode() => Sha256.GetHashCode(StringComparison.Ordinal);
}

/// <summary>What new uploads are computed by.</summary>
internal sealed record InForce(StoredScheme Scheme, string MethodEdition);

/// <summary>Scheme documents in the store. Documents never change, so what was read once is kept by its hash.</summary>
internal static class SchemeStore
{
    private const string Lock = "scheme/current";
    private static readonly ConcurrentDictionary<string, SchemeReading> Read = new(StringComparer.Ordinal);

    /// <summary>The scheme that rates new uploads.</summary>
    public static async Task<StoredScheme> Current(ProgrammeDb context, CancellationToken cancellation)
    {
        var adopted = await context.Set<SchemeAdoptionRow>().AsNoTracking().OrderByDescending(row => row.Id)
            .Select(row => row.Sha256).FirstOrDefaultAsync(cancellation);
        return adopted is null
            ? await Find(context, SchemeLibrary.DefaultKey, cancellation) ?? throw new InvalidOperationException("The carried schemes are not in the store yet.")
            : await Get(context, adopted, cancellation);
    }

    /// <summary>The scheme and the method edition for new uploads.</summary>
    public static async Task<InForce> InForce(ProgrammeDb context, CancellationToken cancellation)
    {
        var methods = await context.Set<MethodPromotionRow>().AsNoTracking().OrderByDescending(row => row.Id)
            .Select(row => row.Edition).FirstOrDefaultAsync(cancellation);
        return new(await Current(context, cancellation), methods ?? MethodEdition.Current);
    }

    /// <summary>The same, and nobody adopts or promotes another before the context's transaction ends.</summary>
    public static async Task<InForce> InForceForWriting(ProgrammeDb context, CancellationToken cancellation)
    {
        await context.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock_shared(hashtextextended({Lock}, 0))", cancellation);
        return await InForce(context, cancellation);
    }

    /// <summary>One writer of an edition at a time; the trigger on its table takes the same lock.</summary>
    public static Task LockEdition(ProgrammeDb context, string key, CancellationToken cancellation)
    {
        var name = $"scheme/edition/{key}";
        return context.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock(hashtextextended({name}, 0))", cancellation);
    }

    /// <summary>Waits for every writer that relies on the current scheme, and keeps new ones waiting until the transaction ends.</summary>
    public static Task Exclude(ProgrammeDb context, CancellationToken cancellation) =>
        context.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock(hashtextextended({Lock}, 0))", cancellation);

    /// <summary>The edition of a key, or null.</summary>
    public static async Task<StoredScheme?> Find(ProgrammeDb context, string key, CancellationToken cancellation)
    {
        var sha256 = await context.Set<SchemeEditionRow>().AsNoTracking().Where(row => row.Key == key).OrderByDescending(row => row.Id)
            .Select(row => row.Sha256).FirstOrDefaultAsync(cancellation);
        return sha256 is null ? null : await Get(context, sha256, cancellation);
    }

    /// <summary>The scheme of a stored document.</summary>
    public static async Task<StoredScheme> Get(ProgrammeDb context, string sha256, CancellationToken cancellation) =>
        new(sha256, (await Reading(context, sha256, cancellation)).Scheme ?? throw new InvalidOperationException($"Stored scheme {sha256} cannot be read any more."));

    /// <summary>A stored document as the reader judges it, coherence included.</summary>
    public static async Task<SchemeReading> Reading(ProgrammeDb context, string sha256, CancellationToken cancellation)
    {
        if (Read.TryGetValue(sha256, out var known))
        {
            return known;
        }

        var row = await context.Set<SchemeDocumentRow>().AsNoTracking().SingleAsync(document => document.Sha256 == sha256, cancellation);
        using var bytes = new MemoryStream(row.Bytes);
        return Read.GetOrAdd(sha256, SchemeReader.Read(bytes, row.File));
    }

    /// <summary>Puts the carried schemes into the store where they are not, and tells the shelf what there is.</summary>
    public static async Task Prepare(ProgrammeDb context, ProgrammeRules rules, DateTimeOffset at, CancellationToken cancellation)
    {
        foreach (var carried in SchemeLibrary.Documents)
        {
            await Carry(context, carried, at, cancellation);
        }

        await Refresh(context, rules, cancellation);
    }

    /// <summary>Tells the shelf what there is now.</summary>
    public static async Task Refresh(ProgrammeDb context, ProgrammeRules rules, CancellationToken cancellation)
    {
        var latest = await Latest(context).Select(row => new { row.Key, row.Sha256 }).ToListAsync(cancellation);
        var byKey = new Dictionary<string, Scheme>(StringComparer.Ordinal);
        foreach (var edition in latest)
        {
            byKey[edition.Key] = (await Get(context, edition.Sha256, cancellation)).Scheme;
        }

        rules.Shelf.Put(byKey, (await Current(context, cancellation)).Scheme);
    }

    /// <summary>The row of each key that stands.</summary>
    public static IQueryable<SchemeEditionRow> Latest(ProgrammeDb context) => context.Set<SchemeEditionRow>().AsNoTracking()
        .Where(row => !context.Set<SchemeEditionRow>().Any(later => later.Key == row.Key && later.Id > row.Id));

    public static string HashOf(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static async Task Carry(ProgrammeDb context, CarriedScheme carried, DateTimeOffset at, CancellationToken cancellation)
    {
        var (bytes, by) = (carried.Bytes.ToArray(), Security.Viewer.Service.Name);
        var (sha256, key) = (HashOf(bytes), carried.Scheme.Key);
        await context.Database.ExecuteSqlAsync(
            $"INSERT INTO lab.scheme_document (sha256, file, bytes, at, by) VALUES ({sha256}, {carried.File}, {bytes}, {at}, {by}) ON CONFLICT DO NOTHING", cancellation);

        // An edition that has rated a run stays what it was, also where a later program carries its file in other words.
        await context.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO lab.scheme_edition (key, sha256, at, by)
            SELECT {key}, {sha256}, {at}, {by}
            WHERE NOT EXISTS (SELECT FROM lab.scheme_edition WHERE key = {key} AND sha256 = {sha256})
              AND NOT EXISTS (SELECT FROM lab.rating WHERE scheme = {key} AND scheme_sha256 IS NOT NULL)
              AND NOT EXISTS (SELECT FROM lab.scheme_adoption WHERE key = {key})
            """, cancellation);
    }
}
