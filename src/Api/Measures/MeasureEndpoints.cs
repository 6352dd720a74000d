using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Programme.Equipment;
using Toepan.Api.Security;

namespace Toepan.Api.Measures;

/// <summary>What was reduced from a run.</summary>
internal static class MeasureEndpoints
{
    public static void MapMeasures(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/tests/{test}", "Measures").ProducesProblem(StatusCodes.Status404NotFound);

        group.MapGet("/measures", Measures).Describe(
            "listMeasures", "Measures of a run",
            "Every measure with unit, window, sources, offset removed, filter class and method edition; position is null for the vehicle's own; an absent one carries its reason. reduction names an earlier reduction.");
        group.MapGet("/structure", Structure).Describe(
            "getStructure", "Structure of a run", "The rigid fit with its references, and the displacement of every point in the vehicle frame, mm.");
        group.MapGet("/reductions", Reductions).Describe(
            "listReductions", "Reductions of a run", "Every reduction, latest first: who, why, under which flags, by which method edition, runtime and commit.");
    }

    private static async Task<Results<Ok<MeasureJson[]>, ProblemHttpResult>> Measures(
        Viewer viewer, MeasureService measures, RunEquipmentService equipment, string test,
        [Description("Number of a reduction of the run; left out: the current one.")] long? reduction, CancellationToken cancellation)
    {
        var inDoubt = (await equipment.List(viewer, test, cancellation)).Value?.InDoubt ?? [];
        return (await measures.Get(viewer, test, reduction, cancellation)).Answer(list => list.Select(measure => MeasureJson.Of(measure, inDoubt)).ToArray());
    }

    private static async Task<Results<Ok<StructureJson>, ProblemHttpResult>> Structure(
        Viewer viewer, MeasureService measures, string test, CancellationToken cancellation) =>
        (await measures.Structure(viewer, test, cancellation)).Answer(StructureJson.Of);

    private static async Task<Results<Ok<IReadOnlyList<ReductionSummary>>, ProblemHttpResult>> Reductions(
        Viewer viewer, MeasureService measures, string test, CancellationToken cancellation) =>
        (await measures.Reductions(viewer, test, cancellation)).Answer();
}
