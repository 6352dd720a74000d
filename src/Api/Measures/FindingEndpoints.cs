using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Export;
using Toepan.Api.Security;

namespace Toepan.Api.Measures;

/// <summary>What film and inspection showed.</summary>
internal static class FindingEndpoints
{
    private static readonly Role[] Finders = [Role.Engineer, Role.Manager, Role.Administrator];

    public static void MapFindings(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/tests/{test}", "Findings").ProducesProblem(StatusCodes.Status404NotFound);

        group.MapGet("/findings", List).Produces<FindingJson[]>(StatusCodes.Status200OK, MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet).ProducesProblem(StatusCodes.Status406NotAcceptable).Describe(
            "listFindings", "Findings of a run",
            "What film and inspection showed, as it counts: the package's findings with what was added, corrected or withdrawn on the page, and who did so when and why. all=true gives those that do not count too. JSON, or text/csv, spreadsheet or Parquet.");
        group.MapPost("/findings", Add).RequireRoles(Finders).ProducesProblem(StatusCodes.Status409Conflict).Describe(
            "addFinding", "Add a finding",
            "Engineers, managers and administrators. The package stays as it is; the run is reduced and rated again. timeMs left out means an inspection.");
        group.MapPut("/findings/{finding}", Correct).RequireRoles(Finders).ProducesProblem(StatusCodes.Status409Conflict).Describe(
            "correctFinding", "Correct a finding",
            "Engineers, managers and administrators. Gives everything the finding says, a reason, and the version last read; 409 where somebody changed it since. Reduces and rates again.");
        group.MapPost("/findings/{finding}/withdrawal", Withdraw).RequireRoles(Finders).ProducesProblem(StatusCodes.Status409Conflict).Describe(
            "withdrawFinding", "Withdraw a finding",
            "Engineers, managers and administrators. A reason and the version last read; the finding is kept and no longer counts. Reduces and rates again.");
    }

    private static async Task<IResult> List(
        Viewer viewer, FindingService findings, HttpRequest request, string test, [Description("Those that do not count too.")] bool? all, CancellationToken cancellation) =>
        ExportAnswer.In(
            request, await findings.List(viewer, test, all ?? false, cancellation), list => list.Select(FindingJson.Of).ToArray(),
            (list, query) => FindingExport.Of(test, list, query));

    private static async Task<Results<Created<FindingResultJson>, ProblemHttpResult>> Add(
        Viewer viewer, FindingService findings, string test, FindingDraftJson body, CancellationToken cancellation) =>
        body.ToDraft() is var draft && draft.Value is { } value
            ? (await findings.Add(viewer, test, value, body.Reason, cancellation)).AnswerCreated(_ => $"/api/v1/tests/{test}/findings", FindingResultJson.Of)
            : draft.Failure!.ToProblem();

    private static async Task<Results<Ok<FindingResultJson>, ProblemHttpResult>> Correct(
        Viewer viewer, FindingService findings, string test, string finding, FindingDraftJson body, CancellationToken cancellation) =>
        body.Version is not { } version ? NoVersion().ToProblem()
            : body.ToDraft() is var draft && draft.Value is { } value
                ? (await findings.Correct(viewer, test, new(finding, version), value, body.Reason, cancellation)).Answer(FindingResultJson.Of)
                : draft.Failure!.ToProblem();

    private static async Task<Results<Ok<FindingResultJson>, ProblemHttpResult>> Withdraw(
        Viewer viewer, FindingService findings, string test, string finding, FindingWithdrawalJson body, CancellationToken cancellation) =>
        body.Version is { } version
            ? (await findings.Withdraw(viewer, test, new(finding, version), body.Reason, cancellation)).Answer(FindingResultJson.Of)
            : NoVersion().ToProblem();

    private static Failure NoVersion() => Failure.BadRequest("'version' is missing: the one last read.");
}
