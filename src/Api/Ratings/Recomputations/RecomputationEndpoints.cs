using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Ratings.Schemes;
using Toepan.Api.Security;

namespace Toepan.Api.Ratings.Recomputations;

/// <summary>Background work on every run, and the method editions.</summary>
internal static class RecomputationEndpoints
{
    public static void MapRecomputations(this IEndpointRouteBuilder app)
    {
        var works = app.MapApiGroup("/recomputations", "Ratings");
        works.MapGet("", List).Describe("listRecomputations", "Recomputations", "Adoptions of schemes and trials of method editions at work on every run, latest first, with how far they are.");
        works.MapGet("/{id:long}", Get).OrNotFound().Describe("getRecomputation", "One recomputation", "How far it is, and the runs whose level it changed.");
        works.MapPost("/{id:long}/stop", Stop).OrNotFound().RequireRoles(Role.Manager, Role.Administrator).ProducesProblem(StatusCodes.Status409Conflict)
            .Describe("stopRecomputation", "Stop a recomputation", "What is done stays done. Managers and administrators.");
        works.MapPost("/{id:long}/resume", Resume).OrNotFound().RequireRoles(Role.Manager, Role.Administrator).ProducesProblem(StatusCodes.Status409Conflict)
            .Describe("resumeRecomputation", "Resume a recomputation", "Goes on with the runs that are left. Managers and administrators.");

        var methods = app.MapApiGroup("/methods", "Measures");
        methods.MapGet("", Methods).Describe("listMethods", "Method editions", "Every edition this program can compute; current marks the one that reduces new uploads.");
        methods.MapGet("/{edition}/comparison", Compare).OrNotFound()
            .Describe("compareMethods", "What a method edition moves", "By measure how many values moved and the largest move, and the runs whose level changes; of the latest recomputation.");
        methods.MapPost("/{edition}/recompute", Start).OrNotFound().RequireRoles(Role.Manager, Role.Reviewer, Role.Administrator).ProducesProblem(StatusCodes.Status409Conflict)
            .Describe("recomputeMethods", "Compute every run by a method edition", "In the background, from kept packages. Nothing becomes current. Managers, reviewers and administrators.");
        methods.MapPost("/{edition}/promote", Promote).OrNotFound().RequireRoles(Role.Reviewer).ProducesProblem(StatusCodes.Status409Conflict)
            .Describe("promoteMethods", "Promote a method edition", "Signed by repeating the edition in confirm, with a reason. Reviewers. Released ratings stay.");
    }

    private static async Task<Results<Ok<IReadOnlyList<Recomputation>>, ProblemHttpResult>> List(
        Viewer viewer, RecomputationService recomputations, CancellationToken cancellation) => (await recomputations.List(viewer, cancellation)).Answer();

    private static async Task<Results<Ok<RecomputationDetail>, ProblemHttpResult>> Get(
        Viewer viewer, RecomputationService recomputations, long id, CancellationToken cancellation) => (await recomputations.Get(viewer, id, cancellation)).Answer();

    private static async Task<Results<Ok<Recomputation>, ProblemHttpResult>> Stop(
        Viewer viewer, RecomputationService recomputations, long id, CancellationToken cancellation) => (await recomputations.Stop(viewer, id, cancellation)).Answer();

    private static async Task<Results<Ok<Recomputation>, ProblemHttpResult>> Resume(
        Viewer viewer, RecomputationService recomputations, long id, CancellationToken cancellation) => (await recomputations.Resume(viewer, id, cancellation)).Answer();

    private static async Task<Results<Ok<IReadOnlyList<MethodSummary>>, ProblemHttpResult>> Methods(
        Viewer viewer, MethodService methods, CancellationToken cancellation) => (await methods.List(viewer, cancellation)).Answer();

    private static async Task<Results<Ok<MethodComparison>, ProblemHttpResult>> Compare(
        Viewer viewer, MethodService methods, string edition, CancellationToken cancellation) => (await methods.Compare(viewer, edition, cancellation)).Answer();

    private static async Task<Results<Ok<Recomputation>, ProblemHttpResult>> Start(
        Viewer viewer, MethodService methods, string edition, SignedAct act, CancellationToken cancellation) =>
        (await methods.Start(viewer, edition, act.Reason, cancellation)).Answer();

    private static async Task<Results<Ok<MethodSummary>, ProblemHttpResult>> Promote(
        Viewer viewer, MethodService methods, string edition, SignedAct act, CancellationToken cancellation) =>
        (await methods.Promote(viewer, edition, act.Confirm, act.Reason, cancellation)).Answer();
}
