using Toepan.Api.Measures.Tables;
using Toepan.Api.Ratings.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages;

/// <summary>Stores a reduction with its measures and rating, and makes it current. Nothing earlier is touched.</summary>
internal static class RunResults
{
    /// <summary>Adds the rows and saves. The context is in a transaction that holds the run's lock; the package is stored.</summary>
    public static async Task<ReductionRow> Write(
        ProgrammeDb context, string sha256, IReadOnlyList<Problem> readProblems, ComputedRun run, RunCause cause, CancellationToken cancellation)
    {
        var reduction = ReductionOf(sha256, readProblems, run, cause);
        var findings = await RunFindings.All(context, reduction.Test, sha256, cancellation);
        reduction.Findings = StoredJson.Write(findings.Where(kept => kept.Standing).Select(RatedFinding.Of));
        var rating = RatingOf(run, cause);
        rating.Reduction = reduction;
        context.Add(new CurrentRatingRow { Test = reduction.Test, At = cause.At, Rating = rating });
        await context.SaveChangesAsync(cancellation);
        return reduction;
    }

    private static ReductionRow ReductionOf(string sha256, IReadOnlyList<Problem> readProblems, ComputedRun run, RunCause cause) => new()
    {
        Test = run.Reduction.Test,
        PackageSha256 = sha256,
        MethodEdition = run.Reduction.MethodEdition,
        ProcedureEdition = run.Reduction.ProcedureEdition,
        Runtime = ProgramVersion.Runtime,
        Commit = ProgramVersion.Commit,
        At = cause.At,
        By = cause.By,
        What = cause.What,
        Why = cause.Why,
        Valid = run.Reduction.Conduct.Valid,
        ProblemCount = run.AllProblems(readProblems).Count(problem => problem.Severity != ProblemSeverity.Note),
        Flags = StoredJson.Write(run.Reduction.Flags),
        Document = StoredJson.Write(run.Reduction with { Measures = [] }),
        Measures = [.. run.Reduction.Measures.Select((measure, ordinal) => MeasureRow.From(ordinal, measure))],
    };

    private static RatingRow RatingOf(ComputedRun run, RunCause cause) => new()
    {
        Scheme = run.Rating.Scheme,
        Valid = run.Rating.Valid,
        Overall = run.Rating.Overall,
        NotRated = run.Rating.NotRated,
        At = cause.At,
        Document = StoredJson.Write(run.Rating),
    };
}
