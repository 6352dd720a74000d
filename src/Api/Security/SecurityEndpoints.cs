using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Toepan.Api.Security;

/// <summary>Accounts and tokens. Administrators only.</summary>
internal static class SecurityEndpoints
{
    public static void MapSecurity(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Security").RequireRoles(Role.Administrator);
        group.MapStanding();
        group.MapInvitations();

        group.MapGet("/accounts", Accounts).Describe("listAccounts", "Accounts", "Everybody who may sign in, with roles.");
        group.MapPost("/accounts", CreateAccount).ProducesProblem(StatusCodes.Status409Conflict)
            .Describe("createAccount", "Make an account", "Name, first password (at least 12 characters) and roles.");
        group.MapPut("/accounts/{id:guid}/roles", SetRoles).OrNotFound().ProducesProblem(StatusCodes.Status409Conflict)
            .Describe("setAccountRoles", "Give an account other roles", "Body: the roles. None: the person may sign in but see nothing. Open sessions follow with their next request; the last administrator stays one.");
        group.MapGet("/tokens", Tokens).Describe("listTokens", "Tokens", "Every bearer token there is or was, without its secret.");
        group.MapPost("/tokens", Issue).ProducesProblem(StatusCodes.Status409Conflict)
            .Describe("issueToken", "Make a machine's token", "Name, roles or scopes (read, upload, arrange, review, publish, administer), expiry. The answer holds the secret, which is shown this once and kept nowhere.");
        group.MapDelete("/tokens/{id:guid}", Revoke).OrNotFound()
            .Describe("revokeToken", "Revoke a token", "It is refused from now on and stays in the list.");
    }

    private static async Task<Results<Ok<IReadOnlyList<AccountSummary>>, ProblemHttpResult>> Accounts(
        Viewer viewer, AccountService accounts, CancellationToken cancellation) => (await accounts.List(viewer, cancellation)).Answer();

    private static async Task<Results<Created<AccountSummary>, ProblemHttpResult>> CreateAccount(
        Viewer viewer, AccountService accounts, NewAccount account, CancellationToken cancellation) =>
        (await accounts.Create(viewer, account, cancellation)).AnswerCreated(made => $"/api/v1/accounts/{made.Id}", made => made);

    private static async Task<Results<Ok<AccountSummary>, ProblemHttpResult>> SetRoles(
        Viewer viewer, AccountStandingService accounts, Guid id, IReadOnlyList<Role> roles, CancellationToken cancellation) =>
        (await accounts.SetRoles(viewer, id, roles, cancellation)).Answer();

    private static async Task<Results<Ok<IReadOnlyList<TokenSummary>>, ProblemHttpResult>> Tokens(
        Viewer viewer, TokenService tokens, CancellationToken cancellation) => (await tokens.List(viewer, cancellation)).Answer();

    private static async Task<Results<Created<IssuedToken>, ProblemHttpResult>> Issue(
        Viewer viewer, TokenService tokens, NewToken token, CancellationToken cancellation) =>
        (await tokens.Issue(viewer, token, cancellation)).AnswerCreated(made => $"/api/v1/tokens/{made.Token.Id}", made => made);

    private static async Task<Results<Ok<TokenSummary>, ProblemHttpResult>> Revoke(
        Viewer viewer, TokenService tokens, Guid id, CancellationToken cancellation) => (await tokens.Revoke(viewer, id, cancellation)).Answer();
}
