using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Packages;
using Toepan.Domain.Packages.Sidecars;

namespace Toepan.Api.Packages.Attachments;

/// <summary>Films of runs and when their frames were: by the package's films.csv, or as engineers, managers and administrators set it on the page.</summary>
public sealed class FilmService(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    /// <summary>Films of a run that a browser can play, in the order they came.</summary>
    public async Task<Outcome<IReadOnlyList<Film>>> List(Viewer viewer, string test, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var subject = AttachmentSubject.Run(test);
        return await AttachmentIndex.Unknown(context, subject, cancellation) is { } unknown
            ? unknown
            : Outcome.List(await Films(context, await AttachmentIndex.Of(context, subject, cancellation), cancellation));
    }

    /// <summary>Sets frame rate and time zero of a film that is still at the version its editor saw. Earlier settings are kept.</summary>
    public async Task<Outcome<Film>> SetTiming(
        Viewer viewer, long id, FilmTimes times, uint version, string? reason = null, CancellationToken cancellation = default)
    {
        var given = string.IsNullOrWhiteSpace(reason) ? null : Texts.Check("A reason", reason, AttachmentEditor.LongestReason);
        if ((Access.ToMeasure(viewer, "set the time of films") ?? given ?? times.Check()) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await AttachmentLock.Begin(context, id, cancellation);
        if (await AttachmentIndex.Find(context, id, cancellation) is not { Withdrawn: false } kept || await One(context, kept, cancellation) is not { } film)
        {
            return Failure.NotFound("film", $"{id}");
        }

        if (film.Version != version)
        {
            return Edits.ChangedMeanwhile($"the times of film {id}", (uint)film.Version);
        }

        context.Add(new FilmTimingRow
        {
            AttachmentId = id, Version = film.Version + 1, FramesPerSecond = times.FramesPerSecond, TimeZeroFrame = times.TimeZeroFrame,
            PlaybackFramesPerSecond = times.PlaybackFramesPerSecond, Reason = reason?.Trim(), By = viewer.Name, At = time.GetUtcNow(),
        });
        await context.SaveChangesAsync(cancellation);
        var after = (await One(context, kept, cancellation))!;
        await audit.Append(context, viewer, new("set film times", $"{kept.Subject.Key}/attachment/{id}", film.Timing, after.Timing), cancellation);
        await transaction.CommitAsync(cancellation);
        return after;
    }

    private static async Task<Film?> One(ProgrammeDb context, KeptAttachment attachment, CancellationToken cancellation) =>
        (await Films(context, [attachment], cancellation)) is [var film] ? film : null;

    private static async Task<IReadOnlyList<Film>> Films(ProgrammeDb context, IReadOnlyList<KeptAttachment> attachments, CancellationToken cancellation)
    {
        var films = attachments.Where(attachment => attachment is { IsFilm: true, Withdrawn: false }).ToList();
        var ids = films.ConvertAll(film => film.Id);
        var hashes = films.ConvertAll(film => film.Sha256);
        var set = (await context.Set<FilmTimingRow>().AsNoTracking().Where(row => ids.Contains(row.AttachmentId)).ToListAsync(cancellation)).ToLookup(row => row.AttachmentId);
        var rates = await context.Set<StoredFileRow>().Where(row => hashes.Contains(row.Sha256)).ToDictionaryAsync(row => row.Sha256, row => row.FramesPerSecond, cancellation);
        var packaged = films is [{ Subject.Test: { } test }, ..] ? await Packaged(context, test, cancellation) : [];
        return films.ConvertAll(film => Of(film, set[film.Id].MaxBy(row => row.Version), packaged, rates[film.Sha256]));
    }

    private static Film Of(KeptAttachment attachment, FilmTimingRow? set, FilmTiming[] packaged, double? rate)
    {
        var said = attachment.PackagePath is { } path ? Array.Find(packaged, film => FilmsFile.IsOf(film, path)) : null;
        var timing = set is null ? said : new FilmTiming(attachment.Name, said?.Camera, set.FramesPerSecond, set.TimeZeroFrame, set.PlaybackFramesPerSecond, 0);
        return new(attachment, timing, rate, set?.By, set?.At, set?.Version ?? 0);
    }

    private static async Task<FilmTiming[]> Packaged(ProgrammeDb context, string test, CancellationToken cancellation) =>
        await CurrentRun.Find(context, test, cancellation) is { } current
            ? StoredJson.Read<FilmTiming[]>(await context.Set<PackageRow>().Where(row => row.Sha256 == current.PackageSha256).Select(row => row.Films).SingleAsync(cancellation))
            : [];
}
