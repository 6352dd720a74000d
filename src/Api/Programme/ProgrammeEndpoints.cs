using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;

namespace Toepan.Api.Programme;

/// <summary>Classes, vehicles, runs and the board.</summary>
internal static class ProgrammeEndpoints
{
    public static void MapProgramme(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Programme");

        group.MapGet("/tests", ListTests).Describe(
            "listTests", "Test runs",
            "Every run by test code; class, vehicle, state and valid narrow the list. State is a word: planned, received, prepared, run, not valid, repeat due, rated, in review, approved or released.");
        group.MapGet("/tests/{test}", GetTest).OrNotFound().Describe(
            "getTest", "One test run",
            "Conduct items with verdicts, occupants, state, repeatOf, problems, channel beliefs, cross-checks, head contacts, package and history.");
        group.MapGet("/classes", ListClasses).Describe("listClasses", "Vehicle classes", "Every class with its number of vehicles and runs.");
        group.MapPost("/classes", AddClass).RequireRoles(Role.Manager, Role.Administrator).ProducesProblem(StatusCodes.Status409Conflict).Describe(
            "addClass", "Add a vehicle class", "Managers and administrators. Key: lower-case letters, digits and hyphens.");
        group.MapGet("/vehicles", ListVehicles).Describe("listVehicles", "Vehicles", "Every vehicle by key, or those of one class.");
        group.MapGet("/vehicles/{key}", GetVehicle).OrNotFound().Describe(
            "getVehicle", "One vehicle", "A vehicle with its runs, the run that rates it (the lowest of its valid ones) and its twins.");
        group.MapPost("/vehicles/{key}/twins", AddTwin).RequireRoles(Role.Manager, Role.Administrator).OrNotFound()
            .ProducesProblem(StatusCodes.Status409Conflict).Describe(
                "addTwin", "Record a twin",
                "Managers and administrators. A vehicle of the same structure, by an evidence document, shares the rating; an unknown one is created.");
        group.MapGet("/board", GetBoard).Describe("getBoard", "The board", "What waits for the viewer, then class × vehicle with the state word and days in it.");
    }

    private static async Task<Results<Ok<TestRunJson[]>, ProblemHttpResult>> ListTests(
        Viewer viewer, TestRunService runs, string? @class, string? vehicle, string? state, bool? valid, CancellationToken cancellation) =>
        (await runs.List(viewer, new TestRunFilter(@class, vehicle, state, valid), cancellation)).Answer(list => list.Select(TestRunJson.Of).ToArray());

    private static async Task<Results<Ok<TestRunDetailJson>, ProblemHttpResult>> GetTest(
        Viewer viewer, TestRunService runs, string test, CancellationToken cancellation) =>
        (await runs.Get(viewer, test, cancellation)).Answer(TestRunDetailJson.Of);

    private static async Task<Results<Ok<IReadOnlyList<VehicleClassSummary>>, ProblemHttpResult>> ListClasses(
        Viewer viewer, VehicleClassService classes, CancellationToken cancellation) =>
        (await classes.List(viewer, cancellation)).Answer();

    private static async Task<Results<Created<VehicleClassSummary>, ProblemHttpResult>> AddClass(
        Viewer viewer, VehicleClassService classes, NewClassJson body, CancellationToken cancellation) =>
        (await classes.Add(viewer, body.Key ?? "", body.Title ?? "", cancellation)).AnswerCreated(added => $"/api/v1/classes/{added.Key}/measures", added => added);

    private static async Task<Results<Ok<VehicleJson[]>, ProblemHttpResult>> ListVehicles(
        Viewer viewer, VehicleService vehicles, string? @class, CancellationToken cancellation) =>
        (await vehicles.List(viewer, @class, cancellation)).Answer(list => list.Select(VehicleJson.Of).ToArray());

    private static async Task<Results<Ok<VehicleDetailJson>, ProblemHttpResult>> GetVehicle(
        Viewer viewer, VehicleService vehicles, string key, CancellationToken cancellation) =>
        (await vehicles.Get(viewer, key, cancellation)).Answer(VehicleDetailJson.Of);

    private static async Task<Results<Created<TwinJson>, ProblemHttpResult>> AddTwin(
        Viewer viewer, TwinService twins, string key, NewTwinJson body, CancellationToken cancellation) =>
        (await twins.Add(viewer, key, body.ToTwin(), cancellation)).AnswerCreated(twin => $"/api/v1/vehicles/{Uri.EscapeDataString(twin.Name.Key)}", TwinJson.Of);

    private static async Task<Results<Ok<BoardJson>, ProblemHttpResult>> GetBoard(Viewer viewer, BoardService board, CancellationToken cancellation) =>
        (await board.Get(viewer, cancellation)).Answer(BoardJson.Of);
}
