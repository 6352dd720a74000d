using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;

namespace Toepan.Api.Analysis;

/// <summary>Measures across runs.</summary>
internal static class AnalysisEndpoints
{
    public static void MapAnalysis(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/classes/{class}", "Analysis").ProducesProblem(StatusCodes.Status404NotFound);

        group.MapGet("/measures", Measures)
            .Produces<ClassMeasuresJson>(StatusCodes.Status200OK, MediaTypes.Json, MediaTypes.Csv)
            .ProducesProblem(StatusCodes.Status406NotAcceptable)
            .Describe(
                "listClassMeasures", "Measures across a class",
                "Vehicles × measures with count, mean, standard deviation (n − 1), median and quartiles (type 7). measure may be given several times; none = all. JSON, or text/csv by Accept (the rows).");
    }

    private static async Task<IResult> Measures(
        Viewer viewer, ClassMeasureService measures, HttpRequest request, string @class,
        [Description("Measure code, several times for several.")] string[]? measure,
        [Description("driver (default), passenger or all.")] string? seat,
        [Description("Procedure key; left out: any.")] string? procedure,
        [Description("valid (default), all, rating (the run that rates each vehicle), measured (valid runs with channels), summary (historic results).")] string? runs,
        CancellationToken cancellation)
    {
        if (MediaTypes.Choose(request, MediaTypes.Json, MediaTypes.Csv) is not { } chosen)
        {
            return MediaTypes.NotAcceptable(MediaTypes.Json, MediaTypes.Csv);
        }

        var query = new ClassMeasureQuery(measure ?? [], seat ?? "driver", procedure, runs ?? "valid");
        var outcome = await measures.Get(viewer, @class, query, cancellation);
        return outcome.Value is not { } table ? outcome.Failure!.ToProblem()
            : chosen == MediaTypes.Csv ? TypedResults.Text(ClassMeasureCsv.Write(table), MediaTypes.Csv, System.Text.Encoding.UTF8)
            : TypedResults.Ok(ClassMeasuresJson.Of(table));
    }
}
