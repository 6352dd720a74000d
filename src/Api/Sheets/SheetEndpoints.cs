using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;

namespace Toepan.Api.Sheets;

/// <summary>Sheets before their release.</summary>
internal static class SheetEndpoints
{
    public static void MapSheets(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/tests/{test}", "Sheets").ProducesProblem(StatusCodes.Status404NotFound);

        group.MapGet("/sheet", Preview).Describe(
            "previewSheet", "Sheet preview of a run", "All a consumer sheet would be made from, bound to one reduction and one rating. Not public.");
    }

    private static async Task<Results<Ok<SheetJson>, ProblemHttpResult>> Preview(
        Viewer viewer, SheetService sheets, string test, CancellationToken cancellation) =>
        (await sheets.Preview(viewer, test, cancellation)).Answer(SheetJson.Of);
}
