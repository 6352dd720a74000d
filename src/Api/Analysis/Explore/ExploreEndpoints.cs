using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Export;
using Toepan.Api.Security;

namespace Toepan.Api.Analysis.Explore;

/// <summary>Questions over the programme, and those that were kept.</summary>
internal static class ExploreEndpoints
{
    public static void MapExplore(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Analysis");

        group.MapGet("/explore", Ask).OrNotFound()
            .Produces<ExploreJson>(StatusCodes.Status200OK, MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet)
            .ProducesProblem(StatusCodes.Status406NotAcceptable)
            .Describe(
                "explore", "A question over the programme",
                "One measure (x), or one against another (y), over runs of all classes or some: scatter with correlation and lines, distribution, trend over model years, ranked list, groups compared. JSON with the figures and the sentence, or the runs as text/csv, spreadsheet or Parquet by Accept or format=csv, xlsx or parquet.");
        group.MapGet("/questions", List).Describe("listQuestions", "Saved questions", "Addresses of analysis pages kept under a name, by name.");
        group.MapPost("/questions", Save).ProducesProblem(StatusCodes.Status409Conflict).Describe(
            "saveQuestion", "Save a question", "Keeps the address of an analysis page under a name; 409 where the name is taken.");
        group.MapDelete("/questions/{id:long}", Remove).OrNotFound().Describe(
            "removeQuestion", "Remove a saved question", "Whoever saved it, managers and administrators.");
    }

    private static async Task<IResult> Ask(
        Viewer viewer, ExploreService service, HttpRequest request,
        [Description("Measure code.")] string x,
        [Description("Measure it is set against.")] string? y,
        [Description("scatter, distribution, trend, ranked or groups.")] string? view,
        [Description("Class key, several times for several; left out: all.")] string[]? @class,
        [Description("driver (default), passenger or all.")] string? seat,
        [Description("Procedure key; left out: any.")] string? procedure,
        [Description("valid (default), all, or rating: the run that rates each vehicle.")] string? runs,
        [Description("class (default), level, dummy, procedure, year or kind.")] string? group,
        [Description("with (default) or without results known by their figures alone.")] string? summaries,
        [Description("First model year from.")] string? yearFrom,
        [Description("First model year to.")] string? yearTo,
        [Description("Mass from, kg.")] string? massFrom,
        [Description("Mass to, kg.")] string? massTo,
        CancellationToken cancellation)
    {
        if (MediaTypes.Choose(request, MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet) is not { } chosen)
        {
            return MediaTypes.NotAcceptable(MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet);
        }

        // The parameters stand in the signature for the contract; they are read together, as the page reads its own address.
        var question = ExploreQuery.Read(request.Query, new ExploreQuestion(x, y));
        var outcome = question.Value is { } asked ? await service.Ask(viewer, asked, cancellation) : new Outcome<ExploreAnswer>(null, question.Failure);
        return outcome.Value is not { } answer ? outcome.Failure!.ToProblem()
            : chosen == MediaTypes.Csv ? TypedResults.Text(ExploreCsv.Write(answer), MediaTypes.Csv, System.Text.Encoding.UTF8)
            : chosen != MediaTypes.Json ? new ExportResult(ExploreExport.Of(answer, request.Path + request.QueryString.ToString()), chosen)
            : TypedResults.Ok(ExploreJson.Of(answer));
    }

    private static async Task<Results<Ok<SavedQuestion[]>, ProblemHttpResult>> List(Viewer viewer, SavedQuestions questions, CancellationToken cancellation) =>
        (await questions.List(viewer, cancellation)).Answer(list => list.ToArray());

    private static async Task<Results<Created<SavedQuestion>, ProblemHttpResult>> Save(
        Viewer viewer, SavedQuestions questions, NewQuestionJson body, CancellationToken cancellation) =>
        (await questions.Save(viewer, body.Name, body.Address, cancellation)).AnswerCreated(saved => $"/api/v1/questions/{saved.Id}", saved => saved);

    private static async Task<Results<Ok<SavedQuestion>, ProblemHttpResult>> Remove(
        Viewer viewer, SavedQuestions questions, long id, CancellationToken cancellation) =>
        (await questions.Remove(viewer, id, cancellation)).Answer();
}
