using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Export;
using Toepan.Api.Programme.Equipment;
using Toepan.Api.Security;

namespace Toepan.Api.Measures;

/// <summary>What was reduced from a run.</summary>
internal static class MeasureEndpoints
{
    public static void MapMeasures(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/tests/{test}", "Measures").ProducesProblem(StatusCodes.Status404NotFound);

        group.MapGet("/measures", Measures)
            .Produces<MeasureJson[]>(StatusCodes.Status200OK, MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet)
            .ProducesProblem(StatusCodes.Status406NotAcceptable).Describe(
            "listMeasures", "Measures of a run",
            "Every measure with unit, window, sources, offset removed, filter class and method edition; position is null for the vehicle's own; an absent one carries its reason. reduction names an earlier reduction. JSON, or text/csv, spreadsheet or Parquet by Accept or format=csv, xlsx or parquet.");
        group.MapGet("/structure", Structure).Produces<StructureJson>(StatusCodes.Status200OK, MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet).ProducesProblem(StatusCodes.Status406NotAcceptable).Describe(
            "getStructure", "Structure of a run", "The rigid fit with its references, and the displacement of every point in the vehicle frame, mm. JSON, or the displacements as text/csv, spreadsheet or Parquet.");
        group.MapGet("/reductions", Reductions).Describe(
            "listReductions", "Reductions of a run", "Every reduction, latest first: who, why, under which flags, by which method edition, runtime and commit.");
    }

    private static async Task<IResult> Measures(
        Viewer viewer, MeasureService measures, RunEquipmentService equipment, HttpRequest request, string test,
        [Description("Number of a reduction of the run; left out: the current one.")] long? reduction, CancellationToken cancellation)
    {
        if (MediaTypes.Choose(request, MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet) is not { } chosen)
        {
            return MediaTypes.NotAcceptable(MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet);
        }

        var outcome = await measures.Get(viewer, test, reduction, cancellation);
        if (outcome.Value is not { } found)
        {
            return outcome.Failure!.ToProblem();
        }

        var inDoubt = (await equipment.List(viewer, test, cancellation)).Value?.InDoubt ?? [];
        MeasureJson[] list = [.. found.Select(measure => MeasureJson.Of(measure, inDoubt))];
        return chosen == MediaTypes.Json ? TypedResults.Ok(list)
            : new ExportResult(MeasureExport.Of(test, list, request.Path + request.QueryString.ToString()), chosen);
    }

    private static async Task<IResult> Structure(
        Viewer viewer, MeasureService measures, HttpRequest request, string test, CancellationToken cancellation) =>
        ExportAnswer.In(request, await measures.Structure(viewer, test, cancellation), StructureJson.Of, (structure, query) => StructureExport.Of(test, structure, query));

    private static async Task<Results<Ok<IReadOnlyList<ReductionSummary>>, ProblemHttpResult>> Reductions(
        Viewer viewer, MeasureService measures, string test, CancellationToken cancellation) =>
        (await measures.Reductions(viewer, test, cancellation)).Answer();
}
