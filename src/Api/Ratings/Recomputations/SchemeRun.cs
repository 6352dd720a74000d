using Microsoft.EntityFrameworkCore;
using Toepan.Api.Measures.Tables;
using Toepan.Api.Packages;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Programme;
using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings.Recomputations;

/// <summary>
/// Rates runs anew from their stored measures. The new rating becomes current, except of a run that is released: there it is kept beside the
/// released one, which stays. Of a run that another act has rated by the scheme meanwhile nothing is made.
/// </summary>
internal sealed class SchemeRun(IReleasedRuns released, TimeProvider time)
{
    public async Task<List<RecomputationStepRow>> Do(ProgrammeDb context, Recomputation work, IReadOnlyList<string> tests, CancellationToken cancellation)
    {
        var scheme = await Scheme(context, work.Id, cancellation);
        var current = await Current(context, tests, cancellation);
        var kept = await released.Among(context, [.. tests], cancellation);
        var reductions = current.Select(run => run.Rating!.ReductionId).ToList();
        var measures = (await context.Set<MeasureRow>().AsNoTracking().Where(row => reductions.Contains(row.ReductionId)).OrderBy(row => row.ReductionId)
            .ThenBy(row => row.Ordinal).ToListAsync(cancellation)).ToLookup(row => row.ReductionId, row => row.ToMeasure());
        var findings = await RunFindings.Standing(context, current.ToDictionary(run => run.Test, run => run.Rating!.Reduction!.PackageSha256), cancellation);
        var occupants = await context.Set<TestRunRow>().Where(row => tests.Contains(row.Test)).ToDictionaryAsync(row => row.Test, row => row.Occupants, cancellation);
        return current.ConvertAll(run => Step(
            context, work, run, scheme, new(run.Rating!.Valid, StoredJson.Read<Occupant[]>(occupants[run.Test]), [.. measures[run.Rating.ReductionId]], findings[run.Test]),
            kept.Contains(run.Test)));
    }

    private RecomputationStepRow Step(ProgrammeDb context, Recomputation work, CurrentRatingRow run, StoredScheme scheme, RatingInputs inputs, bool stays)
    {
        var (at, before) = (time.GetUtcNow(), run.Rating!);
        var step = new RecomputationStepRow { RecomputationId = work.Id, Test = run.Test, BeforeId = before.Id, At = at };
        if (before.SchemeSha256 == scheme.Sha256)
        {
            step.Outcome = StepOutcome.Already;
            return step;
        }

        var rating = Rated(before.ReductionId, scheme, inputs, at);
        context.Add(rating);
        (step.After, step.Outcome) = (rating, stays ? StepOutcome.Released : StepOutcome.Current);
        if (!stays)
        {
            context.Add(new CurrentRatingRow { Test = run.Test, At = at, Rating = rating });
        }

        return step;
    }

    private static RatingRow Rated(long reduction, StoredScheme scheme, RatingInputs inputs, DateTimeOffset at)
    {
        var rating = Rater.Rate(scheme.Scheme, inputs);
        return new()
        {
            ReductionId = reduction, Scheme = rating.Scheme, SchemeSha256 = scheme.Sha256, MeasuresSha256 = InputHashes.Of(inputs.Measures),
            FindingsSha256 = InputHashes.Of(inputs.Findings), Valid = rating.Valid, Overall = rating.Overall, NotRated = rating.NotRated, At = at,
            Document = StoredJson.Write(rating),
        };
    }

    private static async Task<StoredScheme> Scheme(ProgrammeDb context, long id, CancellationToken cancellation)
    {
        var sha256 = await context.Set<RecomputationRow>().Where(row => row.Id == id).Select(row => row.SchemeSha256).SingleAsync(cancellation);
        return await SchemeStore.Get(context, sha256, cancellation);
    }

    private static Task<List<CurrentRatingRow>> Current(ProgrammeDb context, IReadOnlyList<string> tests, CancellationToken cancellation) =>
        context.Set<CurrentRatingRow>().AsNoTracking().Include(row => row.Rating!.Reduction)
            .Where(row => tests.Contains(row.Test) && !context.Set<CurrentRatingRow>().Any(later => later.Test == row.Test && later.Id > row.Id))
            .OrderBy(row => row.Test).ToListAsync(cancellation);
}
