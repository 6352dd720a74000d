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

/// <summary>Ratings of a run.</summary>
public sealed class RatingService(IDbContextFactory<ProgrammeDb> contexts, TimeProvider time)
{
    /// <summary>The stored rating of the current reduction, or the one a named scheme gives.</summary>
    /// <param name="scheme">Scheme key; null = the scheme of the stored rating.</param>
    public async Task<Outcome<Rating>> Get(Viewer viewer, string test, string? scheme = null, CancellationToken cancellation = default) =>
        (await Explained(viewer, test, scheme, cancellation)).Map(evidence => evidence.Rating);

    /// <summary>The same with its inputs by hash, the arithmetic, and what it would now be.</summary>
    public async Task<Outcome<RatingEvidence>> Explained(Viewer viewer, string test, string? scheme = null, CancellationToken cancellation = default)
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
        var row = await context.Set<RatingRow>().AsNoTracking().Include(rating => rating.Reduction).SingleAsync(rating => rating.Id == current.RatingId, cancellation);
        var stored = scheme is null || scheme == row.Scheme;
        if (await SchemeStore.Find(context, stored ? row.Scheme : scheme!, cancellation) is not { } named)
        {
            return Failure.NotFound("scheme", scheme ?? row.Scheme);
        }

        var inputs = await Inputs(context, current, row.Valid, cancellation);
        var rating = stored ? StoredJson.Read<Rating>(row.Document) : Rater.Rate(named.Scheme, inputs);
        var hashes = new InputHashes(
            current.PackageSha256, stored ? row.MeasuresSha256 ?? InputHashes.Of(inputs.Measures) : InputHashes.Of(inputs.Measures),
            stored ? row.FindingsSha256 ?? InputHashes.Of(inputs.Findings) : InputHashes.Of(inputs.Findings), stored ? row.SchemeSha256 : named.Sha256);
        return new RatingEvidence(
            rating, stored, hashes, row.ReductionId, row.Reduction!.MethodEdition, RatingArithmetic.Of(rating, named.Scheme, inputs),
            await Aside(context, test, current.RatingId, cancellation));
    }

    internal static async Task<Rating> Read(ProgrammeDb context, long rating, CancellationToken cancellation) =>
        StoredJson.Read<Rating>(await context.Set<RatingRow>().Where(row => row.Id == rating).Select(row => row.Document).SingleAsync(cancellation));

    /// <summary>The latest rating that was kept beside the current, released one.</summary>
    private static Task<RatingAside?> Aside(ProgrammeDb context, string test, long current, CancellationToken cancellation) =>
        context.Set<RecomputationStepRow>().AsNoTracking()
            .Where(step => step.Test == test && step.BeforeId == current && step.Outcome == StepOutcome.Released)
            .OrderByDescending(step => step.RecomputationId)
            .Select(step => new RatingAside(step.After!.Scheme, step.After.Overall, step.After.NotRated, step.At))
            .FirstOrDefaultAsync(cancellation);

    private static async Task<RatingInputs> Inputs(ProgrammeDb context, CurrentRun current, bool valid, CancellationToken cancellation)
    {
        var programme = StoredJson.Read<ProgrammeDocument>(await context.Set<PackageRow>()
            .Where(row => row.Sha256 == current.PackageSha256).Select(row => row.Programme).SingleAsync(cancellation));
        return new RatingInputs(
            valid, programme.Occupants, await CurrentRun.ReadMeasures(context, current.ReductionId, cancellation),
            await RunFindings.Standing(context, current.Test, current.PackageSha256, cancellation));
    }
}
