using Microsoft.EntityFrameworkCore;
using Toepan.Api.Packages;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Programme;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Domain.Packages;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings;

/// <summary>An edition of the rating rules.</summary>
public sealed record SchemeSummary(string Key, string Title, bool Default);

/// <summary>Ratings of a run.</summary>
public sealed class RatingService(IDbContextFactory<ProgrammeDb> contexts, ProgrammeRules rules, TimeProvider time)
{
    /// <summary>The stored rating of the current reduction, or the one a named scheme gives.</summary>
    /// <param name="scheme">Scheme key; null = the scheme of the stored rating.</param>
    public async Task<Outcome<Rating>> Get(Viewer viewer, string test, string? scheme = null, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        if (await CurrentRun.Find(context, test, cancellation) is not { } current)
        {
            return Failure.NotFound("test", test);
        }

        await RepeatIndex.NoteSeen(context, viewer, test, time.GetUtcNow(), cancellation);
        var stored = await Read(context, current.RatingId, cancellation);
        if (scheme is null || scheme == stored.Scheme)
        {
            return stored;
        }

        return rules.FindScheme(scheme) is { } named
            ? Rater.Rate(named, await Inputs(context, current, stored.Valid, cancellation))
            : Failure.NotFound("scheme", scheme);
    }

    /// <summary>Known schemes.</summary>
    public Task<Outcome<IReadOnlyList<SchemeSummary>>> Schemes(Viewer viewer) => Task.FromResult(
        Access.ToRead(viewer) is { } refusal
            ? refusal
            : Outcome.List<SchemeSummary>(
                [.. rules.Schemes.Select(scheme => new SchemeSummary(scheme.Key, scheme.Title, scheme == rules.DefaultScheme))]));

    internal static async Task<Rating> Read(ProgrammeDb context, long rating, CancellationToken cancellation) =>
        StoredJson.Read<Rating>(await context.Set<RatingRow>().Where(row => row.Id == rating).Select(row => row.Document).SingleAsync(cancellation));

    private static async Task<RatingInputs> Inputs(ProgrammeDb context, CurrentRun current, bool valid, CancellationToken cancellation)
    {
        var programme = StoredJson.Read<ProgrammeDocument>(await context.Set<PackageRow>()
            .Where(row => row.Sha256 == current.PackageSha256).Select(row => row.Programme).SingleAsync(cancellation));
        return new RatingInputs(
            valid, programme.Occupants, await CurrentRun.ReadMeasures(context, current.ReductionId, cancellation),
            await RunFindings.Standing(context, current.Test, current.PackageSha256, cancellation));
    }
}
