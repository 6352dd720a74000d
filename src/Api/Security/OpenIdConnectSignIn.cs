using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.OpenIdConnect;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.IdentityModel.Protocols.OpenIdConnect;

namespace Toepan.Api.Security;

/// <summary>Sign-in through an OpenID Connect provider: authorization code flow with PKCE, where one is configured.</summary>
public static class OpenIdConnectSignIn
{
    public const string StartPath = "/sign-in/provider";
    public const string RefusedPath = SecurityServices.SignInPath + "?provider=refused";
    private const string CallbackPath = "/sign-in/provider/callback";
    private const string DonePath = "/sign-in/provider/done";
    private const string CodePath = "/sign-in/code";

    /// <summary>Authentication scheme, and the provider's name beside its subjects.</summary>
    internal const string Scheme = "oidc";

    internal static void AddOpenIdConnectSignIn(this AuthenticationBuilder authentication, IConfiguration configuration)
    {
        var settings = configuration.GetSection(OpenIdConnectSettings.Section).Get<OpenIdConnectSettings>() ?? new();
        authentication.Services.AddSingleton(settings);
        authentication.Services.AddScoped<ExternalAccounts>();
        if (settings.Configured)
        {
            authentication.AddOpenIdConnect(Scheme, options => Configure(options, settings, configuration["BaseUrl"]?.TrimEnd('/')));
        }
    }

    /// <summary>The two addresses of the flow; none where no provider is configured.</summary>
    public static void MapOpenIdConnectSignIn(this IEndpointRouteBuilder app)
    {
        if (app.ServiceProvider.GetRequiredService<OpenIdConnectSettings>().Configured)
        {
            app.MapGet(StartPath, Start).AllowAnonymous().ExcludeFromDescription();
            app.MapGet(DonePath, Finish).AllowAnonymous().ExcludeFromDescription();
        }
    }

    private static ChallengeHttpResult Start(string? @return) => TypedResults.Challenge(
        new AuthenticationProperties { RedirectUri = QueryString.Create("return", @return ?? "/").ToUriComponent().Insert(0, DonePath) }, [Scheme]);

    private static async Task<IResult> Finish(HttpContext context, ExternalAccounts accounts, SignInService signIns, string? @return)
    {
        var vouched = await context.AuthenticateAsync(IdentityConstants.ExternalScheme);
        var account = vouched.Succeeded ? await accounts.Find(vouched.Principal, context.RequestAborted) : null;
        var step = account is null ? SignInStep.Refused : await signIns.SignInExternal(account.Account, account.Login);
        await context.SignOutAsync(IdentityConstants.ExternalScheme);
        return TypedResults.LocalRedirect(step switch
        {
            SignInStep.SignedIn => Local(@return),
            SignInStep.CodeNeeded => CodePath + QueryString.Create("return", Local(@return)).ToUriComponent(),
            _ => RefusedPath,
        });
    }

    /// <summary>A path of this site, else the board.</summary>
    private static string Local(string? address) =>
        address is ['/', ..] && !address.StartsWith("//", StringComparison.Ordinal) && !address.StartsWith("/\\", StringComparison.Ordinal) && !address.Any(char.IsControl)
            ? address
            : "/";

    private static void Configure(OpenIdConnectOptions options, OpenIdConnectSettings settings, string? baseUrl)
    {
        (options.Authority, options.ClientId, options.ClientSecret) = (settings.Authority, settings.ClientId, settings.ClientSecret);
        options.SignInScheme = IdentityConstants.ExternalScheme;
        options.CallbackPath = CallbackPath;
        options.ResponseType = OpenIdConnectResponseType.Code;
        options.ResponseMode = OpenIdConnectResponseMode.Query;
        options.UsePkce = true;
        options.RequireHttpsMetadata = settings.RequireHttps;
        options.MapInboundClaims = false;
        options.SaveTokens = false;
        foreach (var scope in settings.Scopes)
        {
            options.Scope.Add(scope);
        }

        // The answer comes back as a top-level GET, which Lax cookies accompany, also where a trial runs without TLS.
        foreach (var cookie in (CookieBuilder[])[options.CorrelationCookie, options.NonceCookie])
        {
            (cookie.SameSite, cookie.SecurePolicy) = (SameSiteMode.Lax, CookieSecurePolicy.SameAsRequest);
        }

        options.Events.OnRedirectToIdentityProvider = context =>
        {
            context.ProtocolMessage.RedirectUri = baseUrl is { Length: > 0 } ? baseUrl + CallbackPath : context.ProtocolMessage.RedirectUri;
            return Task.CompletedTask;
        };
        options.Events.OnRemoteFailure = context =>
        {
            context.Response.Redirect(RefusedPath);
            context.HandleResponse();
            return Task.CompletedTask;
        };
    }
}
