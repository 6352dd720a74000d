namespace Toepan.Api.Security;

/// <summary>Sign-in through another provider, section <c>SignIn:OpenIdConnect</c>. Without an authority there is none.</summary>
public sealed class OpenIdConnectSettings
{
    public const string Section = "SignIn:OpenIdConnect";

    /// <summary>Issuer; its discovery document lies under <c>/.well-known/openid-configuration</c>.</summary>
    public string? Authority { get; set; }
    public string? ClientId { get; set; }
    public string? ClientSecret { get; set; }

    /// <summary>What the button says after "Sign in with".</summary>
    public string Title { get; set; } = "your organisation";

    /// <summary>Scopes to ask for beyond <c>openid</c> and <c>profile</c>.</summary>
    public string[] Scopes { get; set; } = [];

    /// <summary>Claim that the account's name is taken from at its first sign-in.</summary>
    public string NameClaim { get; set; } = "preferred_username";

    /// <summary>Claim whose values name roles; null = roles are given by administrators here alone.</summary>
    public string? RoleClaim { get; set; }

    /// <summary>Value of the role claim → role, e.g. <c>crash-lab = engineer</c>. A value that is not listed gives nothing.</summary>
    public Dictionary<string, string> Roles { get; set; } = [];

    /// <summary>False only against a provider on the same machine, in trials.</summary>
    public bool RequireHttps { get; set; } = true;

    public bool Configured => !string.IsNullOrEmpty(Authority);
}
