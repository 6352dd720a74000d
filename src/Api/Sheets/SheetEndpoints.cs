using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;
using Toepan.Domain.Sheets;

namespace Toepan.Api.Sheets;

/// <summary>Sheets before their release.</summary>
internal static class SheetEndpoints
{
    public static void MapSheets(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/tests/{test}", "Sheets").ProducesProblem(StatusCodes.Status404NotFound);

        group.MapGet("/sheet", Preview).Describe(
            "previewSheet", "Sheet preview of a run", "All a consumer sheet would be made from, bound to one reduction and one rating. Not public.");
        group.MapGet("/sheet/document", Document).Produces<SheetDocument>().Describe(
            "composeSheet", "Sheet document of a run",
            "The frozen document of a sheet: drawing data, figures with the measure each comes from, and texts in every language, each with the spans that figures fill. X-Sheet-Hash is what a reviewer signs. Not public.");
    }

    private static async Task<Results<Ok<SheetJson>, ProblemHttpResult>> Preview(
        Viewer viewer, SheetService sheets, string test, CancellationToken cancellation) =>
        (await sheets.Preview(viewer, test, cancellation)).Answer(SheetJson.Of);

    private static async Task<IResult> Document(
        HttpContext http, Viewer viewer, SheetService sheets, string test, CancellationToken cancellation)
    {
        var outcome = await sheets.Document(viewer, test, cancellation);
        if (outcome.Value is not { } document)
        {
            return outcome.Failure!.ToProblem();
        }

        http.Response.Headers["X-Sheet-Hash"] = SheetDocumentJson.Hash(document);
        return TypedResults.Bytes(SheetDocumentJson.Write(document), "application/json");
    }
}
