using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme;

/// <summary>Plans, preparation, decisions about repeats, procedures.</summary>
internal static class PlanEndpoints
{
    private static readonly Role[] Keepers = [Role.Engineer, Role.Manager, Role.Administrator];

    public static void MapPlan(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Programme");

        group.MapGet("/plan", ListPlan).Describe("listPlan", "Planned runs", "Runs that are planned and not made, by date; or every plan of one vehicle.");
        group.MapPost("/plan", AddPlan).RequireRoles(Role.Manager, Role.Administrator).OrConflict().Describe(
            "planRun", "Plan a run", "Managers and administrators. A repeat (repeatOf) is refused until the decision to repeat is recorded.");
        group.MapGet("/plan/{test}", GetPlan).OrNotFound().Describe("getPlan", "One planned run", "The plan of a run, with its state word.");
        group.MapPut("/plan/{test}", ChangePlan).RequireRoles(Keepers).OrNotFound().OrConflict().Describe(
            "changePlan", "Change a planned run",
            "One of: date (managers, administrators), prepared (the specimen is received and every required item recorded), ranOn. Names the version last read; 409 where somebody changed it since.");
        group.MapGet("/tests/{test}/preparation", GetPreparation).OrNotFound().Describe(
            "getPreparation", "Preparation of a run", "Every preparation item of the procedure edition with record, bounds, margin and verdict.");
        group.MapPost("/tests/{test}/preparation", RecordPreparation).RequireRoles(Keepers).OrNotFound().OrConflict().Describe(
            "recordPreparation", "Record preparation items",
            "Texts by item key; all or none. Earlier records stay. 409 where somebody recorded one of them after the named version.");
        group.MapGet("/tests/{test}/repeat-decisions", ListDecisions).OrNotFound().Describe(
            "listRepeatDecisions", "Decisions about a repeat", "Latest first, each with who had opened the run's measures by then.");
        group.MapPost("/tests/{test}/repeat-decisions", Decide).RequireRoles(Role.Manager, Role.Administrator).OrNotFound().OrConflict().Describe(
            "decideRepeat", "Decide about a repeat",
            "Managers and administrators. 409 with the reason where the run does not bear it: a repeat never replaces a valid run because of its result.");
        group.MapGet("/procedures", ListProcedures).Describe("listProcedures", "Procedures", "Every procedure edition in full.");
        group.MapGet("/procedures/{key}", GetProcedure).OrNotFound().Describe(
            "getProcedure", "One procedure", "Its latest edition, or the one named by edition: conditions, tolerances, seats, channels, points, bias rule, preparation items.");
    }

    private static async Task<Results<Ok<PlannedRunJson[]>, ProblemHttpResult>> ListPlan(
        Viewer viewer, PlanService plans, string? vehicle, CancellationToken cancellation) =>
        (await plans.List(viewer, vehicle, cancellation)).Answer(list => list.Select(PlannedRunJson.Of).ToArray());

    private static async Task<Results<Created<PlannedRunJson>, ProblemHttpResult>> AddPlan(
        Viewer viewer, PlanService plans, NewPlanJson body, CancellationToken cancellation) =>
        (await plans.Plan(viewer, body.ToPlan(), cancellation)).AnswerCreated(plan => $"/api/v1/plan/{plan.Test}", PlannedRunJson.Of);

    private static async Task<Results<Ok<PlannedRunJson>, ProblemHttpResult>> GetPlan(
        Viewer viewer, PlanService plans, string test, CancellationToken cancellation) =>
        (await plans.Get(viewer, test, cancellation)).Answer(PlannedRunJson.Of);

    private static async Task<Results<Ok<PlannedRunJson>, ProblemHttpResult>> ChangePlan(
        Viewer viewer, PlanService plans, string test, PlanChangeJson body, CancellationToken cancellation)
    {
        var outcome = body switch
        {
            { Date: { } date, Prepared: not true, RanOn: null } => await plans.Move(viewer, test, date, body.Version, cancellation),
            { Date: null, Prepared: true, RanOn: null } => await plans.SignPreparation(viewer, test, body.Version, cancellation),
            { Date: null, Prepared: not true, RanOn: { } day } => await plans.ReportCrash(viewer, test, day, body.Version, cancellation),
            _ => Failure.BadRequest("Give exactly one of 'date', 'prepared' (true) and 'ranOn'."),
        };
        return outcome.Answer(PlannedRunJson.Of);
    }

    private static async Task<Results<Ok<Preparation>, ProblemHttpResult>> GetPreparation(
        Viewer viewer, PreparationService preparation, string test, CancellationToken cancellation) =>
        (await preparation.Get(viewer, test, cancellation)).Answer();

    private static async Task<Results<Ok<Preparation>, ProblemHttpResult>> RecordPreparation(
        Viewer viewer, PreparationService preparation, string test, PreparationChangeJson body, CancellationToken cancellation) =>
        (await preparation.Record(viewer, test, body.Items ?? new Dictionary<string, string>(), body.Version, cancellation)).Answer();

    private static async Task<Results<Ok<IReadOnlyList<RepeatDecision>>, ProblemHttpResult>> ListDecisions(
        Viewer viewer, RepeatDecisionService decisions, string test, CancellationToken cancellation) =>
        (await decisions.List(viewer, test, cancellation)).Answer();

    private static async Task<Results<Created<RepeatDecision>, ProblemHttpResult>> Decide(
        Viewer viewer, RepeatDecisionService decisions, string test, NewRepeatDecisionJson body, CancellationToken cancellation) =>
        (await decisions.Decide(viewer, test, body.ToDecision(), cancellation))
            .AnswerCreated(_ => $"/api/v1/tests/{Uri.EscapeDataString(test)}/repeat-decisions", decision => decision);

    private static async Task<Results<Ok<IReadOnlyList<ProcedureEdition>>, ProblemHttpResult>> ListProcedures(Viewer viewer, ProcedureService procedures) =>
        (await procedures.List(viewer)).Answer();

    private static async Task<Results<Ok<ProcedureEdition>, ProblemHttpResult>> GetProcedure(
        Viewer viewer, ProcedureService procedures, string key, int? edition) =>
        (await procedures.Get(viewer, key, edition)).Answer();
}
