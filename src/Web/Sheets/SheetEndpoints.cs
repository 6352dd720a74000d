using Toepan.Api.Security;
using Toepan.Api.Sheets;
using Toepan.Domain.Sheets;

namespace Toepan.Web.Sheets;

/// <summary>Sheets as files.</summary>
public static class SheetEndpoints
{
    public static void MapSheetFiles(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/sheets/preview/{test}.pdf", Pdf)
            .WithName("PreviewSheetPdf")
            .WithSummary("Preview of a consumer sheet as PDF")
            .WithDescription("One tagged page composed from the current reduction and rating of a run. For signed-in people only.")
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .ProducesProblem(StatusCodes.Status404NotFound);

    private static async Task<IResult> Pdf(string test, Viewer viewer, SheetService sheets, HttpContext http, CancellationToken cancellation)
    {
        var outcome = await sheets.Preview(viewer, test, cancellation);
        if (outcome.Value is not { } preview)
        {
            return TypedResults.Problem(outcome.Failure!.Detail, statusCode: StatusCodes.Status404NotFound, title: outcome.Failure.Title);
        }

        var sheet = SheetComposer.Compose(preview.Facts(), SheetTexts.English);
        http.Response.Headers.CacheControl = "no-store";
        return TypedResults.File(SheetPdf.Render(sheet, preview.Structure, preview.PreparedAt), "application/pdf", $"{preview.Run.Test}-preview.pdf");
    }
}
