using Toepan.Api.Measures.Tables;
using Toepan.Api.Ratings;
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
        var rating = Rows(sha256, readProblems, run, cause);
        var reduction = rating.Reduction!;
        reduction.Findings = await RatedWith(context, reduction.Test, sha256, cancellation);
        context.Add(new CurrentRatingRow { Test = reduction.Test, At = cause.At, Rating = rating });
        await context.SaveChangesAsync(cancellation);
        return reduction;
    }

    /// <summary>The findings that count, as a reduction keeps them.</summary>
    public static async Task<string> RatedWith(ProgrammeDb context, string test, string sha256, CancellationToken cancellation)
    {
        var findings = await RunFindings.All(context, test, sha256, cancellation);
        return StoredJson.Write(findings.Where(kept => kept.Standing).Select(RatedFinding.Of));
    }

    /// <summary>The rating with its reduction and measures as rows that nobody has added yet.</summary>
    public static RatingRow Rows(string sha256, IReadOnlyList<Problem> readProblems, ComputedRun run, RunCause cause)
    {
        var rating = RatingOf(run, cause);
        rating.Reduction = ReductionOf(sha256, readProblems, run, cause);
        return rating;
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
        SchemeSha256 = run.Scheme.Sha256,
        MeasuresSha256 = InputHashes.Of(run.Reduction.Measures),
        FindingsSha256 = InputHashes.Of(run.Findings),
        Valid = run.Rating.Valid,
        Overall = run.Rating.Overall,
        NotRated = run.Rating.NotRated,
        At = cause.At,
        Document = StoredJson.Write(run.Rating),
    };
}
