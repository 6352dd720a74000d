using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Toepan.Api.Security;

/// <summary>Whether accounts may sign in, and invitations; in the administrators' group.</summary>
internal static class PeopleEndpoints
{
    public static void MapStanding(this IEndpointRouteBuilder group)
    {
        group.MapPost("/accounts/{id:guid}/disable", Disable).OrNotFound().ProducesProblem(StatusCodes.Status409Conflict).Describe(
            "disableAccount", "Disable an account", "Its sessions and personal tokens are refused from the next request on; the last administrator stays enabled.");
        group.MapPost("/accounts/{id:guid}/enable", Enable).OrNotFound().Describe(
            "enableAccount", "Enable an account", "It may sign in again, also out of a lockout. Tokens that were revoked stay so.");
        group.MapPost("/accounts/{id:guid}/end-sessions", EndSessions).OrNotFound().Describe(
            "endAccountSessions", "End an account's sessions", "Everywhere; the person signs in anew.");
        group.MapPost("/accounts/{id:guid}/reset-second-factor", ResetSecondFactor).OrNotFound().Describe(
            "resetSecondFactor", "Take an account's second factor away", "For a person who lost it. Sessions end; the person may set up another.");
    }

    public static void MapInvitations(this IEndpointRouteBuilder group)
    {
        group.MapGet("/invitations", List).Describe("listInvitations", "Invitations", "Latest first, each open, used, expired or withdrawn.");
        group.MapPost("/invitations", Invite).Describe(
            "invite", "Invite a person", "Whom it is for, roles, days it works (7). The answer holds the link's path, which is shown this once and kept nowhere.");
        group.MapDelete("/invitations/{id:guid}", Withdraw).OrNotFound().ProducesProblem(StatusCodes.Status409Conflict).Describe(
            "withdrawInvitation", "Withdraw an invitation", "The link no longer works.");
    }

    private static async Task<Results<Ok<AccountSummary>, ProblemHttpResult>> Disable(
        Viewer viewer, AccountStandingService accounts, Guid id, CancellationToken cancellation) => (await accounts.Disable(viewer, id, cancellation)).Answer();

    private static async Task<Results<Ok<AccountSummary>, ProblemHttpResult>> Enable(
        Viewer viewer, AccountStandingService accounts, Guid id, CancellationToken cancellation) => (await accounts.Enable(viewer, id, cancellation)).Answer();

    private static async Task<Results<Ok<AccountSummary>, ProblemHttpResult>> EndSessions(
        Viewer viewer, AccountStandingService accounts, Guid id, CancellationToken cancellation) => (await accounts.EndSessions(viewer, id, cancellation)).Answer();

    private static async Task<Results<Ok<AccountSummary>, ProblemHttpResult>> ResetSecondFactor(
        Viewer viewer, AccountStandingService accounts, Guid id, CancellationToken cancellation) => (await accounts.ResetSecondFactor(viewer, id, cancellation)).Answer();

    private static async Task<Results<Ok<IReadOnlyList<Invitation>>, ProblemHttpResult>> List(
        Viewer viewer, InvitationService invitations, CancellationToken cancellation) => (await invitations.List(viewer, cancellation)).Answer();

    private static async Task<Results<Created<IssuedInvitation>, ProblemHttpResult>> Invite(
        Viewer viewer, InvitationService invitations, NewInvitation invitation, CancellationToken cancellation) =>
        (await invitations.Invite(viewer, invitation, cancellation)).AnswerCreated(made => $"/api/v1/invitations/{made.Invitation.Id}", made => made);

    private static async Task<Results<Ok<Invitation>, ProblemHttpResult>> Withdraw(
        Viewer viewer, InvitationService invitations, Guid id, CancellationToken cancellation) => (await invitations.Withdraw(viewer, id, cancellation)).Answer();
}
