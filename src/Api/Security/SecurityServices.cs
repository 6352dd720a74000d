using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>Who is asking, and who may: cookie for people, bearer token for machines, nothing for anybody else.</summary>
public static class SecurityServices
{
    public const string SignInPath = "/sign-in";
    public const string DeniedPath = "/denied";
    private const string EitherScheme = "Either";
    private static readonly TimeSpan Session = TimeSpan.FromHours(8);

    public static IServiceCollection AddSecurity(this IServiceCollection services, IConfiguration configuration)
    {
        var authentication = services.AddAuthentication(EitherScheme);
        authentication.AddOpenIdConnectSignIn(configuration);
        authentication
            .AddPolicyScheme(EitherScheme, null, options => options.ForwardDefaultSelector = context =>
                TokenHandler.Carries(context.Request) ? ViewerClaims.TokenScheme : IdentityConstants.ApplicationScheme)
            .AddScheme<AuthenticationSchemeOptions, TokenHandler>(ViewerClaims.TokenScheme, null)
            .AddIdentityCookies(cookies =>
            {
                cookies.ApplicationCookie!.Configure(Configure);
                cookies.ExternalCookie!.Configure(options => options.Cookie.Name = "toepan.external");
                cookies.TwoFactorUserIdCookie!.Configure(options => options.Cookie.Name = "toepan.code");
                cookies.TwoFactorRememberMeCookie!.Configure(options => options.Cookie.Name = "toepan.remembered");
            });
        services.AddScoped<IUserConfirmation<Account>, EnabledAccounts>();
        services.AddIdentityCore<Account>(Configure).AddRoles<IdentityRole<Guid>>().AddEntityFrameworkStores<ProgrammeDb>().AddSignInManager()
            .AddPasswordValidator<PasswordRules>().AddTokenProvider<SecondFactorCodes>(SecondFactorCodes.Provider);
        services.AddAuthorizationBuilder().SetFallbackPolicy(Policies.SignedInWithRole).SetDefaultPolicy(Policies.SignedInWithRole);
        services.AddAntiforgery(options => options.Cookie.Name = "toepan.antiforgery");
        services.AddHttpContextAccessor();
        services.AddSingleton<IViewerAccessor, RequestViewer>();
        services.AddScoped<SignInService>();
        services.AddScoped<TokenService>();
        services.AddScoped<PersonalTokenService>();
        services.AddScoped<AccountService>();
        services.AddScoped<AccountStandingService>();
        services.AddScoped<InvitationService>();
        services.AddScoped<OwnAccountService>();
        services.AddScoped<SecondFactorService>();
        return services;
    }

    /// <summary>To stand after authentication and authorization.</summary>
    public static IApplicationBuilder UseApiAntiforgery(this IApplicationBuilder app) => app.UseMiddleware<ApiAntiforgery>();

    /// <summary>To stand after authentication.</summary>
    public static IApplicationBuilder UseReadOnlyTokens(this IApplicationBuilder app) => app.UseMiddleware<ReadOnlyTokens>();

    private static void Configure(IdentityOptions options)
    {
        options.Password.RequiredLength = PasswordRules.LeastLength;
        options.Password.RequiredUniqueChars = PasswordRules.LeastDistinctCharacters;
        options.Password.RequireDigit = false;
        options.Password.RequireLowercase = false;
        options.Password.RequireUppercase = false;
        options.Password.RequireNonAlphanumeric = false;
        options.Lockout.MaxFailedAccessAttempts = PasswordRules.FailuresBeforeLockout;
        options.Lockout.DefaultLockoutTimeSpan = PasswordRules.Lockout;
        options.SignIn.RequireConfirmedAccount = true;
    }

    private static void Configure(CookieAuthenticationOptions options)
    {
        options.Cookie.Name = "toepan.session";
        options.Cookie.HttpOnly = true;
        options.Cookie.SameSite = SameSiteMode.Lax;
        options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        options.ExpireTimeSpan = Session;
        options.SlidingExpiration = true;
        options.LoginPath = SignInPath;
        options.AccessDeniedPath = DeniedPath;
        options.ReturnUrlParameter = "return";
        options.Events.OnValidatePrincipal = SessionCheck.Validate;
        options.Events.OnRedirectToLogin = context => RedirectOr(context, ProblemAnswer.Unauthorized);
        options.Events.OnRedirectToAccessDenied = context => RedirectOr(context, ProblemAnswer.Forbidden);
    }

    private static Task RedirectOr(RedirectContext<CookieAuthenticationOptions> context, Func<HttpContext, Task> answer)
    {
        if (ApiPaths.Covers(context.Request.Path))
        {
            context.Response.Headers.WWWAuthenticate = ViewerClaims.TokenScheme;
            return answer(context.HttpContext);
        }

        context.Response.Redirect(context.RedirectUri);
        return Task.CompletedTask;
    }
}
