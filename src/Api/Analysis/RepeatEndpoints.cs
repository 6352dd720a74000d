using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Export;
using Toepan.Api.Security;

namespace Toepan.Api.Analysis;

/// <summary>Runs of one vehicle side by side.</summary>
internal static class RepeatEndpoints
{
    public static void MapRepeats(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Analysis");

        group.MapGet("/repeats", Compare).OrNotFound().Produces<RepeatsJson>(StatusCodes.Status200OK, MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet).ProducesProblem(StatusCodes.Status406NotAcceptable).Describe(
            "compareRepeats", "Repeated runs of a vehicle",
            "Differences from the first run, mean, standard deviation (n − 1) and coefficient of variation of every measure; ISO/TS 18571 scores of every curve against the first run's; which parts repeat; the chance that each run's level holds. JSON, or the measures as text/csv, spreadsheet or Parquet.");
    }

    private static async Task<IResult> Compare(
        Viewer viewer, RepeatService repeats, HttpRequest request,
        [Description("Two to four test codes of one vehicle and procedure, separated by commas; the first is the reference.")] string tests,
        CancellationToken cancellation) =>
        ExportAnswer.In(request, await repeats.Get(viewer, Codes(tests), cancellation), RepeatsJson.Of, RepeatExport.Of);

    private static string[] Codes(string tests) => tests.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}
