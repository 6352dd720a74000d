using Toepan.Api.Security;
using Toepan.Api.Sheets;

namespace Toepan.Web.Sheets;

/// <summary>Sheets as files.</summary>
public static class SheetEndpoints
{
    public static void MapSheetFiles(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/sheets/preview/{test}.pdf", Pdf)
            .WithName("PreviewSheetPdf")
            .WithSummary("Preview of a consumer sheet as PDF")
            .WithDescription("One tagged page composed from the current reduction and rating of a run, in the language of ?lang= (en, de). For signed-in people only.")
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .ProducesProblem(StatusCodes.Status404NotFound);

    private static async Task<IResult> Pdf(string test, string? lang, Viewer viewer, SheetService sheets, HttpContext http, CancellationToken cancellation)
    {
        var outcome = await sheets.Document(viewer, test, cancellation);
        if (outcome.Value is not { } document)
        {
            return TypedResults.Problem(outcome.Failure!.Detail, statusCode: StatusCodes.Status404NotFound, title: outcome.Failure.Title);
        }

        http.Response.Headers.CacheControl = "no-store";
        return TypedResults.File(SheetPdf.Render(document, SheetLanguages.Known(lang)), "application/pdf", $"{document.Test}-preview.pdf");
    }
}
