using System.ComponentModel;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Export;
using Toepan.Api.Security;
using Toepan.Domain.Analysis.Disagreements;

namespace Toepan.Api.Analysis.Disagreements;

/// <summary>One contradiction as the contract writes it.</summary>
public sealed record DisagreementJson(DisagreementKind Kind, string Test, string Vehicle, bool Summary, string? Measure, string Sentence, double Weight);

/// <summary>What was found in one class, as the contract writes it.</summary>
public sealed record ClassFindingsJson(string Class, string Title, int Runs, IReadOnlyList<DisagreementJson> Disagreements)
{
    public static ClassFindingsJson Of(ClassFindings found) => new(
        found.Class, found.Title, found.Runs,
        [.. found.Found.Select(one => new DisagreementJson(one.Found.Kind, one.Found.Test, one.Vehicle.Key, one.Summary, one.Found.Measure, one.Found.Sentence, one.Found.Weight))]);
}

/// <summary>Runs that contradict themselves or their class.</summary>
internal static class DisagreementEndpoints
{
    public static void MapDisagreements(this IEndpointRouteBuilder app) => app.MapApiGroup("", "Analysis").MapGet("/disagreements", Find).OrNotFound()
        .Produces<ClassFindingsJson[]>(StatusCodes.Status200OK, MediaTypes.Json, MediaTypes.Csv, MediaTypes.Spreadsheet, MediaTypes.Parquet).ProducesProblem(StatusCodes.Status406NotAcceptable).Describe(
        "listDisagreements", "Runs that contradict themselves or their class",
        "Instruments against film, structure against leg loads, left against right, figures far outside their class: each with its reason. Needs eight runs of a class. JSON, or text/csv, spreadsheet or Parquet.");

    private static async Task<IResult> Find(
        Viewer viewer, DisagreementService service, HttpRequest request, [Description("Class key; left out: every class.")] string? @class, CancellationToken cancellation) =>
        ExportAnswer.In(request, await service.Find(viewer, @class, cancellation), list => list.Select(ClassFindingsJson.Of).ToArray(), Table);

    private static ExportTable Table(IReadOnlyList<ClassFindings> classes, string query) => new(
        "disagreements",
        [ExportColumn.Text("class"), ExportColumn.Text("kind"), ExportColumn.Text("test"), ExportColumn.Text("vehicle"), ExportColumn.Text("measure"), ExportColumn.Text("sentence"), ExportColumn.Number("weight")],
        classes.SelectMany(row => row.Found.Select(one => new object?[] { row.Class, one.Found.Kind.ToString(), one.Found.Test, one.Vehicle.Key, one.Found.Measure, one.Found.Sentence, one.Found.Weight })),
        query, [Domain.Measures.MethodEdition.Current]);
}
