using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;
using Toepan.Domain.Programme.Equipment;

namespace Toepan.Api.Programme.Equipment;

/// <summary>What somebody enters about a piece of equipment; version with a change.</summary>
public sealed record EquipmentChangeJson(EquipmentKind? Kind, string? Serial, string? Title, string? Range, string? Note, DateOnly? RetiredOn, uint? Version)
{
    public EquipmentFacts ToFacts() => new(Kind ?? EquipmentKind.Other, Serial ?? "", Title ?? "", Range, Note, RetiredOn);
}

/// <summary>A calibration to record.</summary>
public sealed record NewCalibrationJson(DateOnly? On, DateOnly? DueOn, string? Certificate);

/// <summary>A check of a dummy's part to record.</summary>
public sealed record NewDummyCheckJson(DummyPart? Part, bool? Passed, DateOnly? On, string? Note);

/// <summary>Equipment a run used, or not after all.</summary>
public sealed record EquipmentUseJson(long? Equipment, int? Position, bool? Used);

/// <summary>Equipment, calibrations, dummy checks, and what runs used.</summary>
internal static class EquipmentEndpoints
{
    private static readonly Role[] Keepers = [Role.Engineer, Role.Manager, Role.Administrator];

    public static void MapEquipment(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Equipment");

        group.MapGet("/equipment", List).Describe("listEquipment", "Equipment", "Transducers, dummies, gates, arms and what else is calibrated, with the day each is due.");
        group.MapPost("/equipment", Add).RequireRoles(Keepers).OrConflict().Describe("addEquipment", "Add equipment", "Engineers, managers and administrators. Serials are unique within a kind.");
        group.MapGet("/equipment/{id:long}", Get).OrNotFound().Describe("getEquipment", "One piece of equipment", "With its calibrations, checks and runs.");
        group.MapPut("/equipment/{id:long}", Change).RequireRoles(Keepers).OrNotFound().OrConflict().Describe(
            "changeEquipment", "Change equipment", "Gives every value and the version last read; 409 where somebody changed it since.");
        group.MapPost("/equipment/{id:long}/calibrations", Calibrate).RequireRoles(Keepers).OrNotFound().Describe(
            "addCalibration", "Record a calibration", "Day, day due (inclusive) and certificate.");
        group.MapPost("/equipment/{id:long}/checks", CheckPart).RequireRoles(Keepers).OrNotFound().Describe(
            "addDummyCheck", "Record a dummy check", "Part, passed or not, day. A failed check puts the part's measures in doubt on every run of the dummy since its last pass.");
        group.MapGet("/tests/{test}/equipment", OfRun).OrNotFound().Describe(
            "listRunEquipment", "Equipment of a run", "Assigned, or named by the serial in a channel's header; what was out of date on the day; parts of dummies in doubt.");
        group.MapPost("/tests/{test}/equipment", Assign).RequireRoles(Keepers).OrNotFound().Describe(
            "assignEquipment", "Say what a run used", "A dummy with its seat position; used=false takes it back.");
    }

    private static async Task<Results<Ok<EquipmentItem[]>, ProblemHttpResult>> List(Viewer viewer, EquipmentService service, CancellationToken cancellation) =>
        (await service.List(viewer, cancellation)).Answer(list => list.ToArray());

    private static async Task<Results<Created<EquipmentDetail>, ProblemHttpResult>> Add(Viewer viewer, EquipmentService service, EquipmentChangeJson body, CancellationToken cancellation) =>
        body.Kind is null
            ? Failure.BadRequest("kind is missing.").ToProblem()
            : (await service.Add(viewer, body.ToFacts(), cancellation)).AnswerCreated(added => $"/api/v1/equipment/{added.Item.Id}", added => added);

    private static async Task<Results<Ok<EquipmentDetail>, ProblemHttpResult>> Get(Viewer viewer, EquipmentService service, long id, CancellationToken cancellation) =>
        (await service.Get(viewer, id, cancellation)).Answer();

    private static async Task<Results<Ok<EquipmentDetail>, ProblemHttpResult>> Change(
        Viewer viewer, EquipmentService service, long id, EquipmentChangeJson body, CancellationToken cancellation) =>
        body is { Version: { } version, Kind: not null }
            ? (await service.Change(viewer, id, body.ToFacts(), version, cancellation)).Answer()
            : Failure.BadRequest("kind and version are needed: the version last read.").ToProblem();

    private static async Task<Results<Ok<EquipmentDetail>, ProblemHttpResult>> Calibrate(
        Viewer viewer, EquipmentService service, long id, NewCalibrationJson body, CancellationToken cancellation) =>
        body is { On: { } on, DueOn: { } due }
            ? (await service.Calibrate(viewer, id, new(on, due, body.Certificate ?? ""), cancellation)).Answer()
            : Failure.BadRequest("on and dueOn are needed.").ToProblem();

    private static async Task<Results<Ok<EquipmentDetail>, ProblemHttpResult>> CheckPart(
        Viewer viewer, EquipmentService service, long id, NewDummyCheckJson body, CancellationToken cancellation) =>
        body is { Part: { } part, Passed: { } passed, On: { } on }
            ? (await service.CheckPart(viewer, id, part, passed, on, body.Note, cancellation)).Answer()
            : Failure.BadRequest("part, passed and on are needed.").ToProblem();

    private static async Task<Results<Ok<RunEquipmentList>, ProblemHttpResult>> OfRun(Viewer viewer, RunEquipmentService service, string test, CancellationToken cancellation) =>
        (await service.List(viewer, test, cancellation)).Answer();

    private static async Task<Results<Ok<RunEquipmentList>, ProblemHttpResult>> Assign(
        Viewer viewer, RunEquipmentService service, string test, EquipmentUseJson body, CancellationToken cancellation) =>
        body.Equipment is { } equipment
            ? (await service.Assign(viewer, test, equipment, body.Position, body.Used ?? true, cancellation)).Answer()
            : Failure.BadRequest("equipment is missing.").ToProblem();
}
