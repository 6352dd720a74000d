using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Export;
using Toepan.Api.Security;

namespace Toepan.Api.Analysis;

/// <summary>Measures across runs.</summary>
internal static class AnalysisEndpoints
{
    public static void MapAnalysis(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/classes/{class}", "Analysis").ProducesProblem(StatusCodes.Status404NotFound);

        group.MapGet("/measures", Measures)
            .Produces<ClassMeasuresJson>(StatusCodes.Status200OK, MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet)
            .ProducesProblem(StatusCodes.Status406NotAcceptable)
            .Describe(
                "listClassMeasures", "Measures across a class",
                "Vehicles × measures with count, mean, standard deviation (n − 1), median and quartiles (type 7). measure may be given several times; none = all. JSON, or the rows as text/csv, spreadsheet or Parquet by Accept or format=csv, xlsx or parquet; each form carries query, units and method editions.");
        group.MapGet("/channels", Channels)
            .Produces(StatusCodes.Status200OK, contentType: MediaTypes.Parquet).ProducesProblem(StatusCodes.Status406NotAcceptable)
            .Describe(
                "downloadClassChannels", "Channels of a class",
                "Every channel of every run of the class, or those named, as one Parquet file: a row group a channel, in the working unit, offset removed, flags applied, filtered to cfc or as recorded. Sent while it is read. A channel that cannot be given so is left out.");
    }

    private static async Task<IResult> Measures(
        Viewer viewer, ClassMeasureService measures, HttpRequest request, string @class,
        [Description("Measure code, several times for several.")] string[]? measure,
        [Description("driver (default), passenger or all.")] string? seat,
        [Description("Procedure key; left out: any.")] string? procedure,
        [Description("valid (default), all, rating (the run that rates each vehicle), measured (valid runs with channels), summary (historic results).")] string? runs,
        CancellationToken cancellation)
    {
        if (MediaTypes.Choose(request, MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet) is not { } chosen)
        {
            return MediaTypes.NotAcceptable(MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet);
        }

        var query = new ClassMeasureQuery(measure ?? [], seat ?? "driver", procedure, runs ?? "valid");
        var outcome = await measures.Get(viewer, @class, query, cancellation);
        return outcome.Value is not { } table ? outcome.Failure!.ToProblem()
            : chosen == MediaTypes.Json ? TypedResults.Ok(ClassMeasuresJson.Of(table, Asked(request)))
            : new ExportResult(ClassMeasureExport.Of(table, Asked(request)), chosen);
    }

    private static async Task<IResult> Channels(
        Viewer viewer, ClassChannelService channels, HttpRequest request, string @class,
        [Description("Channel code, several times for several; left out: all.")] string[]? channel,
        [Description("60, 180, 600 or 1000; left out: as recorded.")] int? cfc,
        CancellationToken cancellation)
    {
        if (MediaTypes.Choose(request, MediaTypes.Parquet) is null)
        {
            return MediaTypes.NotAcceptable(MediaTypes.Parquet);
        }

        var outcome = await channels.Open(viewer, @class, channel ?? [], cfc, Asked(request), cancellation);
        return outcome.Value is { } file ? new ClassChannelResult(file) : outcome.Failure!.ToProblem();
    }

    private static string Asked(HttpRequest request) => request.Path + request.QueryString.ToString();
}
