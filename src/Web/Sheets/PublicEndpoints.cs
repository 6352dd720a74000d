using System.Text.Json;
using Toepan.Domain.Sheets.Releases;

namespace Toepan.Web.Sheets;

/// <summary>What everybody may read: released sheets, and nothing that says what else there is.</summary>
public static class PublicEndpoints
{
    private static readonly string[] Reading = [HttpMethods.Get, HttpMethods.Head];

    public static void MapPublicSheets(this IEndpointRouteBuilder routes)
    {
        routes.MapMethods("/released", Reading, Index).AllowAnonymous().WithName("ListReleasedSheets").WithSummary("Released sheets").WithTags("Public");
        routes.MapMethods("/sheets/{slug}", Reading, Page).AllowAnonymous().WithName("GetReleasedSheet").WithSummary("A released sheet, its newest version").WithTags("Public");
        routes.MapMethods("/sheets/{slug}.json", Reading, Data).AllowAnonymous().WithName("GetReleasedSheetData").WithSummary("The same as a schema.org Dataset").WithTags("Public");
        routes.MapMethods("/sheets/{slug}.pdf", Reading, Paper).AllowAnonymous().WithName("GetReleasedSheetPdf").WithSummary("The same as PDF").WithTags("Public");
        routes.MapMethods("/sheets/{slug}/v/{n:int}", Reading, Version).AllowAnonymous().WithName("GetReleasedSheetVersion").WithSummary("One version of a released sheet").WithTags("Public");
    }

    private static async Task<IResult> Index(HttpContext http, PublicSheets sheets, PublicAnswers answers, CancellationToken cancellation)
    {
        var (asOf, all) = await sheets.All(cancellation);
        return answers.Give(http, asOf, await answers.Render<PublicIndexPage>(new() { [nameof(PublicIndexPage.Sheets)] = all }), "text/html; charset=utf-8");
    }

    private static Task<IResult> Page(HttpContext http, string slug, PublicSheets sheets, PublicAnswers answers, CancellationToken cancellation) =>
        Give(http, slug, sheets, sheet => sheet.Newest, answers, cancellation);

    private static Task<IResult> Version(HttpContext http, string slug, int n, PublicSheets sheets, PublicAnswers answers, CancellationToken cancellation) =>
        Give(http, slug, sheets, sheet => sheet.Versions.FirstOrDefault(version => version.Number == n), answers, cancellation);

    private static async Task<IResult> Give(
        HttpContext http, string slug, PublicSheets sheets, Func<PublicSheet, PublicVersion?> choose, PublicAnswers answers, CancellationToken cancellation)
    {
        if (await sheets.Find(slug, cancellation) is not { } sheet || choose(sheet) is not { } shown)
        {
            return await Nothing(http);
        }

        var html = await answers.Render<PublicSheetPage>(new() { [nameof(PublicSheetPage.Sheet)] = sheet, [nameof(PublicSheetPage.Shown)] = shown });
        return answers.Give(http, sheet.AsOf, html, "text/html; charset=utf-8");
    }

    private static async Task<IResult> Paper(HttpContext http, string slug, PublicSheets sheets, PublicAnswers answers, CancellationToken cancellation) =>
        await sheets.Find(slug, cancellation) is { Newest: { Sheet: { Kind: not ReleaseKind.Withdrawal } published } } sheet
            ? answers.Give(http, sheet.AsOf, SheetPdf.Render(published.Document, "en"), "application/pdf")
            : await Nothing(http);

    private static async Task<IResult> Data(HttpContext http, string slug, PublicSheets sheets, PublicAnswers answers, CancellationToken cancellation) =>
        await sheets.Find(slug, cancellation) is { } sheet
            ? answers.Give(http, sheet.AsOf, JsonSerializer.SerializeToUtf8Bytes(SheetDataset.Of(sheet)), "application/ld+json")
            : await Nothing(http);

    private static async Task<IResult> Nothing(HttpContext http)
    {
        await PublicAnswers.NotFound(http);
        return TypedResults.Empty;
    }
}
