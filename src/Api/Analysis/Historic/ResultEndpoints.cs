using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Programme;
using Toepan.Api.Security;

namespace Toepan.Api.Analysis.Historic;

/// <summary>Historic summary results in, listed, and withdrawn.</summary>
internal static class ResultEndpoints
{
    private static readonly Role[] Bringers = [Role.Engineer, Role.Manager, Role.Administrator];

    public static void MapResults(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Historic results");

        group.MapPost("/results", Import).RequireRoles(Bringers).OrNotFound().OrConflict()
            .WithMetadata(new DisableRequestSizeLimitAttribute())
            .Accepts(typeof(Stream), isOptional: true, MediaTypes.Csv, "text/plain", "application/octet-stream")
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge).ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .Describe(
                "importResults", "Bring historic results",
                "Body: text/csv with the columns test,vehicle,make,model,class,modelYear,procedure,date,position,dummy,testMassKg and one for each measure code; an empty cell is absent; one row a test and seat. All rows or none. Unknown vehicles, classes and procedures are made known and marked. 201 when stored; 200 for a dry run and where every test is there with the same content; 409 where a test has other content or exists as a run with channels; 422 with problems that name line, column, value and limit.");
        group.MapGet("/results", List).Describe(
            "listResults", "Summary results", "The summary results that count, a page at a time, by test code. With batch: those of one batch, withdrawn or not.");
        group.MapGet("/results/batches", Batches).Describe("listResultBatches", "Batches of historic results", "Every file that was taken in, the latest first, and whether it still counts.");
        group.MapGet("/results/batches/{id:long}", Batch).OrNotFound().Describe("getResultBatch", "One batch", "A file that was taken in.");
        group.MapPost("/results/batches/{id:long}/withdrawal", Withdraw).RequireRoles(Bringers).OrNotFound().OrConflict().Describe(
            "withdrawResultBatch", "Withdraw a batch", "Engineers, managers and administrators. With a reason; the batch counts no longer, its rows stay.");
    }

    private static async Task<Results<Created<ResultImport>, Ok<ResultImport>, ProblemHttpResult>> Import(
        Viewer viewer, ResultService results, HttpRequest request,
        [Description("Say what would be, store nothing.")] bool? dryRun,
        [Description("Number of the batch to replace.")] long? replaces,
        [Description("Why it is replaced.")] string? reason,
        CancellationToken cancellation)
    {
        if (request.ContentLength > results.MaxBytes)
        {
            return results.TooLarge().ToProblem();
        }

        var outcome = await results.Import(viewer, request.Body, new ResultOptions(dryRun ?? false, replaces, reason), cancellation);
        return outcome.Value switch
        {
            null => outcome.Failure!.ToProblem(),
            { Batch: { } batch } stored => TypedResults.Created($"/api/v1/results/batches/{batch}", stored),
            var known => TypedResults.Ok(known),
        };
    }

    private static async Task<Results<Ok<SummaryPage>, ProblemHttpResult>> List(
        Viewer viewer, ResultListService results, string? @class, string? vehicle, string? test, long? batch, int? page, CancellationToken cancellation) =>
        (await results.List(viewer, new SummaryFilter(@class, vehicle, test, batch, page ?? 1), cancellation)).Answer();

    private static async Task<Results<Ok<ResultBatch[]>, ProblemHttpResult>> Batches(Viewer viewer, ResultListService results, CancellationToken cancellation) =>
        (await results.Batches(viewer, cancellation)).Answer(list => list.ToArray());

    private static async Task<Results<Ok<ResultBatch>, ProblemHttpResult>> Batch(
        Viewer viewer, ResultListService results, long id, CancellationToken cancellation) => (await results.Batch(viewer, id, cancellation)).Answer();

    private static async Task<Results<Ok<ResultBatch>, ProblemHttpResult>> Withdraw(
        Viewer viewer, ResultService results, long id, WithdrawalJson body, CancellationToken cancellation) =>
        (await results.Withdraw(viewer, id, body.Reason ?? "", cancellation)).Answer();
}

/// <summary>Why a batch counts no longer.</summary>
public sealed record WithdrawalJson(string? Reason);
