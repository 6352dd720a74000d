using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Toepan.Api.Security;

/// <summary>Who one is, and one's own tokens.</summary>
internal static class OwnEndpoints
{
    public static void MapOwn(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("/me", "Security");

        group.MapGet("", Me).Describe("whoAmI", "Who asks", "Name and present roles of the person or the token.");
        group.MapGet("/tokens", Tokens).Describe("listOwnTokens", "One's own tokens", "Of the person who has signed in; a token is refused here.");
        group.MapPost("/tokens", Issue).ProducesProblem(StatusCodes.Status409Conflict).Describe(
            "issueOwnToken", "Make a personal token",
            "Name, scopes (read, upload, arrange, review, publish, administer) within one's roles, end within a year. It acts as the person, with no more than the person's roles at the time. The answer holds the secret, which is shown this once.");
        group.MapDelete("/tokens/{id:guid}", Revoke).OrNotFound().Describe("revokeOwnToken", "Revoke a personal token", "It is refused from now on.");
    }

    private static Ok<Self> Me(Viewer viewer) => TypedResults.Ok(new Self(viewer.Name, [.. viewer.Roles.Order()]));

    private static async Task<Results<Ok<IReadOnlyList<TokenSummary>>, ProblemHttpResult>> Tokens(
        Viewer viewer, PersonalTokenService tokens, CancellationToken cancellation) => (await tokens.List(viewer, cancellation)).Answer();

    private static async Task<Results<Created<IssuedToken>, ProblemHttpResult>> Issue(
        Viewer viewer, PersonalTokenService tokens, NewPersonalToken token, CancellationToken cancellation) =>
        (await tokens.Issue(viewer, token, cancellation)).AnswerCreated(made => $"/api/v1/me/tokens/{made.Token.Id}", made => made);

    private static async Task<Results<Ok<TokenSummary>, ProblemHttpResult>> Revoke(
        Viewer viewer, PersonalTokenService tokens, Guid id, CancellationToken cancellation) => (await tokens.Revoke(viewer, id, cancellation)).Answer();

    /// <summary>Who asks.</summary>
    internal sealed record Self(string Name, IReadOnlyList<Role> Roles);
}
