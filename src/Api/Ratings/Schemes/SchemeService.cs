using Microsoft.EntityFrameworkCore;
using Npgsql;
using Toepan.Api.Programme;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings.Schemes;

/// <summary>Editions of the rating rules. Every role reads them; managers and administrators bring drafts.</summary>
public sealed class SchemeService(IDbContextFactory<ProgrammeDb> contexts, ProgrammeRules rules, AuditTrail audit, TimeProvider time)
{
    /// <summary>Most editions kept.</summary>
    public const int MostEditions = 500;

    /// <summary>Every edition: the one that rates first, then by key.</summary>
    public async Task<Outcome<IReadOnlyList<SchemeSummary>>> List(Viewer viewer, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return Outcome.List<SchemeSummary>([.. (await Summaries(context, null, cancellation)).OrderByDescending(scheme => scheme.Default).ThenBy(scheme => scheme.Key, StringComparer.Ordinal)]);
    }

    /// <summary>One edition.</summary>
    public async Task<Outcome<SchemeDetail>> Get(Viewer viewer, string key, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if ((await Summaries(context, key, cancellation)).SingleOrDefault() is not { } summary)
        {
            return Failure.NotFound("scheme", key);
        }

        var reading = await SchemeStore.Reading(context, summary.Sha256, cancellation);
        var file = await context.Set<SchemeDocumentRow>().Where(row => row.Sha256 == summary.Sha256).Select(row => row.File).SingleAsync(cancellation);
        var adoptions = await context.Set<SchemeAdoptionRow>().AsNoTracking().Where(row => row.Key == key).OrderByDescending(row => row.Id)
            .Select(row => new Adoption(row.Key, row.Sha256, row.Reason, row.At, row.By)).ToListAsync(cancellation);
        return new SchemeDetail(summary, file, reading.Scheme!, reading.Coherence, adoptions);
    }

    /// <summary>The document of an edition as it came.</summary>
    public async Task<Outcome<SchemeFile>> Document(Viewer viewer, string key, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var row = await SchemeStore.Latest(context).Where(edition => edition.Key == key)
            .Join(context.Set<SchemeDocumentRow>(), edition => edition.Sha256, document => document.Sha256, (_, document) => document).SingleOrDefaultAsync(cancellation);
        if (row is null)
        {
            return Failure.NotFound("scheme", key);
        }

        var json = SchemeReader.IsJson(row.Bytes, row.File);
        return new SchemeFile($"{key}.{(json ? "json" : "yaml")}", json ? "application/json" : "application/yaml", row.Bytes);
    }

    /// <summary>Takes a draft edition in, or says what is wrong with it, line by line. The same bytes again change nothing.</summary>
    /// <param name="document">The document; at most <see cref="SchemeReader.MaxBytes"/> are read.</param>
    /// <param name="file">Its name; the ending chooses JSON or YAML.</param>
    public async Task<Outcome<SchemeUpload>> Upload(
        Viewer viewer, Stream document, string file, bool dryRun, CancellationToken cancellation = default)
    {
        if (Access.ToArrange(viewer, "bring rating schemes") is { } refusal)
        {
            return refusal;
        }

        var bytes = await Bytes(document, cancellation);
        using var copy = new MemoryStream(bytes);
        var name = StoredText.Clean(Path.GetFileName(file));
        var reading = SchemeReader.Read(copy, name.Length is > 0 and <= 200 ? name : "scheme");
        if (reading.Scheme is not { } scheme)
        {
            var first = reading.Problems[0];
            return new Failure(FailureKind.Unreadable, "The scheme is not accepted", $"{first.File}, line {first.Line}: {first.Message}") { Problems = reading.Problems };
        }

        var upload = new SchemeUpload(scheme.Key, true, null, SchemeStore.HashOf(bytes), [], reading.Coherence, dryRun);
        return await Keep(viewer, upload, name, bytes, cancellation);
    }

    private async Task<Outcome<SchemeUpload>> Keep(Viewer viewer, SchemeUpload upload, string file, byte[] bytes, CancellationToken cancellation)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await SchemeStore.LockEdition(context, upload.Key, cancellation);
        var before = (await Summaries(context, upload.Key, cancellation)).SingleOrDefault();
        if (before?.Sha256 == upload.Sha256)
        {
            return upload with { Created = false };
        }

        if (before is { Draft: false })
        {
            return Fixed(before);
        }

        if (before is null && await SchemeStore.Latest(context).CountAsync(cancellation) >= MostEditions)
        {
            return Failure.BadRequest($"The programme keeps at most {MostEditions} editions.");
        }

        if (!upload.DryRun)
        {
            if (await Write(context, viewer, upload, file, bytes, cancellation) is { } lost)
            {
                return lost;
            }

            await audit.Append(
                context, viewer,
                new AuditNote("scheme", $"scheme/{upload.Key}", before is null ? null : new { document = before.Sha256 }, new { document = upload.Sha256, file }), cancellation);
            await transaction.CommitAsync(cancellation);
            await SchemeStore.Refresh(context, rules, cancellation);
        }

        return upload with { Replaces = before?.Sha256 };
    }

    private async Task<Failure?> Write(ProgrammeDb context, Viewer viewer, SchemeUpload upload, string file, byte[] bytes, CancellationToken cancellation)
    {
        var at = time.GetUtcNow();
        await context.Database.ExecuteSqlAsync(
            $"INSERT INTO lab.scheme_document (sha256, file, bytes, at, by) VALUES ({upload.Sha256}, {file}, {bytes}, {at}, {viewer.Name}) ON CONFLICT DO NOTHING", cancellation);
        context.Add(new SchemeEditionRow { Key = upload.Key, Sha256 = upload.Sha256, At = at, By = viewer.Name });
        try
        {
            await context.SaveChangesAsync(cancellation);
            return null;
        }
        catch (DbUpdateException refused) when (refused.InnerException is PostgresException { SqlState: PostgresErrorCodes.IntegrityConstraintViolation })
        {
            return Fixed(upload.Key);
        }
    }

    private static Failure Fixed(SchemeSummary edition) => Fixed(edition.Key);

    private static Failure Fixed(string key) => new(
        FailureKind.Conflict, "The edition is fixed", $"{key} rates runs and is never changed: bring the change as another edition.");

    private static async Task<List<SchemeSummary>> Summaries(ProgrammeDb context, string? key, CancellationToken cancellation)
    {
        var current = await SchemeStore.Current(context, cancellation);
        var editions = await SchemeStore.Latest(context).Where(row => key == null || row.Key == key).ToListAsync(cancellation);
        var ratings = await context.Set<RatingRow>().Where(row => key == null || row.Scheme == key).GroupBy(row => row.Scheme)
            .Select(group => new { group.Key, Count = group.Count() }).ToDictionaryAsync(group => group.Key, group => group.Count, cancellation);
        var runs = await CurrentRatings(context).Where(row => key == null || row.Rating!.Scheme == key).GroupBy(row => row.Rating!.Scheme)
            .Select(group => new { group.Key, Count = group.Count() }).ToDictionaryAsync(group => group.Key, group => group.Count, cancellation);
        var found = new List<SchemeSummary>();
        foreach (var edition in editions)
        {
            var scheme = (await SchemeStore.Get(context, edition.Sha256, cancellation)).Scheme;
            found.Add(new(
                edition.Key, scheme.Title, edition.Sha256 == current.Sha256, scheme.Procedure, runs.GetValueOrDefault(edition.Key),
                ratings.GetValueOrDefault(edition.Key), edition.Sha256, edition.At, edition.By));
        }

        return found;
    }

    private static IQueryable<CurrentRatingRow> CurrentRatings(ProgrammeDb context) => context.Set<CurrentRatingRow>().AsNoTracking()
        .Where(row => !context.Set<CurrentRatingRow>().Any(later => later.Test == row.Test && later.Id > row.Id));

    private static async Task<byte[]> Bytes(Stream document, CancellationToken cancellation)
    {
        using var kept = new MemoryStream();
        var chunk = new byte[16384];
        for (int read; (read = await document.ReadAsync(chunk, cancellation)) > 0 && kept.Length <= SchemeReader.MaxBytes;)
        {
            kept.Write(chunk, 0, read);
        }

        return kept.ToArray();
    }
}
