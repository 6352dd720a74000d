using Toepan.Web.Sheets;
using Toepan.Api;
using Toepan.Api.Security;
using Toepan.Api.Store;
using Toepan.Web.Components;

namespace Toepan.Web.Hosting;

/// <summary>What a request passes through, in order, and where it can go.</summary>
internal static class Pipeline
{
    public static void UseToepan(this WebApplication app)
    {
        app.UseSecurityHeaders();
        app.UseWhen(IsApi, api => api.UseExceptionHandler().UseStatusCodePages(answer => ProblemFor(answer.HttpContext)));
        app.UseWhen(
            IsPage,
            pages => pages.UseExceptionHandler("/error", createScopeForErrors: true).UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true));
        if (!app.Environment.IsDevelopment())
        {
            app.UseHsts();
        }

        app.UseRouting();
        app.UseAuthentication();
        app.UseAuthorization();
        app.UseAntiforgery();
        app.UseApiAntiforgery();
        app.UseReadOnlyTokens();
    }

    public static void MapToepan(this WebApplication app)
    {
        app.MapStaticAssets().AllowAnonymous();
        app.MapHealth();
        app.MapApi();
        app.MapOpenIdConnectSignIn();
        app.MapSheetFiles();
        app.MapPublicSheets();
        app.MapRazorComponents<App>();
    }

    private static bool IsApi(HttpContext context) => ApiPaths.Covers(context.Request.Path);

    private static bool IsPage(HttpContext context) => !IsApi(context);

    /// <summary>Answers without a body, such as 404 for a route that is not there, get the one error body of the API.</summary>
    private static Task ProblemFor(HttpContext context)
    {
        var (title, detail) = context.Response.StatusCode switch
        {
            StatusCodes.Status404NotFound => ("No such route", $"There is nothing at {context.Request.Path}."),
            StatusCodes.Status405MethodNotAllowed => ("Method not allowed", $"{context.Request.Path} does not take {context.Request.Method}."),
            StatusCodes.Status415UnsupportedMediaType => ("Unsupported media type", $"{context.Request.Path} does not take '{context.Request.ContentType}'."),
            _ => ("Bad request", "The request cannot be answered."),
        };
        return ProblemAnswer.Write(context, context.Response.StatusCode, title, detail);
    }
}
