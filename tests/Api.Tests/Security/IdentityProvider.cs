using System.Collections.Concurrent;
using System.Security.Claims;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.IdentityModel.JsonWebTokens;
using Microsoft.IdentityModel.Tokens;

namespace Toepan.Api.Tests.Security;

/// <summary>
/// A small OpenID Connect provider on the loopback (OpenID Connect Core 1.0, code flow; Discovery 1.0; PKCE of RFC 7636): whoever comes to
/// its authorize address is signed in as <see cref="Subject"/>.
/// </summary>
internal sealed class IdentityProvider : IAsyncDisposable
{
    public const string ClientId = "toepan";
    public const string ClientSecret = "a secret of two parties";
    private readonly WebApplication app;
    private readonly RsaSecurityKey key = new(RSA.Create(2048)) { KeyId = "k1" };
    private readonly ConcurrentDictionary<string, (string Challenge, string Nonce, string Redirect)> codes = new();

    private IdentityProvider(WebApplication app) => this.app = app;

    public string Subject { get; set; } = "subject-1";

    public string PreferredName { get; set; } = "runa";

    public string[] Groups { get; set; } = [];

    /// <summary>Signs with a key its key set does not have.</summary>
    public bool Forges { get; set; }

    public string Address => app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();

    public static async Task<IdentityProvider> Start()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Logging.ClearProviders();
        var app = builder.Build();
        var provider = new IdentityProvider(app);
        app.MapGet("/.well-known/openid-configuration", provider.Discovery);
        app.MapGet("/authorize", provider.Authorize);
        app.MapPost("/token", provider.Token);
        app.MapGet("/jwks", provider.Keys);
        await app.StartAsync(TestContext.Current.CancellationToken);
        return provider;
    }

    public Dictionary<string, string> Settings(params (string Name, string Value)[] more) => new(
        more.Select(one => KeyValuePair.Create($"SignIn:OpenIdConnect:{one.Name}", one.Value)))
    {
        ["SignIn:OpenIdConnect:Authority"] = Address, ["SignIn:OpenIdConnect:ClientId"] = ClientId,
        ["SignIn:OpenIdConnect:ClientSecret"] = ClientSecret, ["SignIn:OpenIdConnect:RequireHttps"] = "false",
    };

    public ValueTask DisposeAsync() => app.DisposeAsync();

    private IResult Discovery() => Results.Json(new Dictionary<string, object>
    {
        ["issuer"] = Address, ["authorization_endpoint"] = $"{Address}/authorize", ["token_endpoint"] = $"{Address}/token", ["jwks_uri"] = $"{Address}/jwks",
        ["response_types_supported"] = (string[])["code"], ["subject_types_supported"] = (string[])["public"], ["id_token_signing_alg_values_supported"] = (string[])["RS256"],
    });

    private IResult Authorize(HttpRequest request)
    {
        var query = request.Query;
        if (query["client_id"] != ClientId || query["response_type"] != "code" || query["code_challenge_method"] != "S256" || !query["scope"].ToString().Split(' ').Contains("openid"))
        {
            return Results.BadRequest("Not an authorization request this provider takes.");
        }

        var code = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        codes[code] = (query["code_challenge"]!, query["nonce"]!, query["redirect_uri"]!);
        return Results.Redirect($"{query["redirect_uri"]}?code={code}&state={Uri.EscapeDataString(query["state"]!)}");
    }

    private async Task<IResult> Token(HttpRequest request)
    {
        var form = await request.ReadFormAsync();
        var verifier = Base64UrlEncoder.Encode(SHA256.HashData(Encoding.ASCII.GetBytes(form["code_verifier"].ToString())));
        if (!codes.TryRemove(form["code"].ToString(), out var asked) || asked.Challenge != verifier || asked.Redirect != form["redirect_uri"]
            || form["client_id"] != ClientId || form["client_secret"] != ClientSecret || form["grant_type"] != "authorization_code")
        {
            return Results.Json(new { error = "invalid_grant" }, statusCode: StatusCodes.Status400BadRequest);
        }

        return Results.Json(new Dictionary<string, object> { ["access_token"] = "unused", ["token_type"] = "Bearer", ["expires_in"] = 300, ["id_token"] = IdToken(asked.Nonce) });
    }

    private IResult Keys()
    {
        var parameters = key.Rsa.ExportParameters(includePrivateParameters: false);
        return Results.Json(new
        {
            keys = new[] { new { kty = "RSA", use = "sig", alg = "RS256", kid = key.KeyId, n = Base64UrlEncoder.Encode(parameters.Modulus!), e = Base64UrlEncoder.Encode(parameters.Exponent!) } },
        });
    }

    private string IdToken(string nonce)
    {
        using var foreign = RSA.Create(2048);
        var signing = Forges ? new RsaSecurityKey(foreign) { KeyId = key.KeyId, CryptoProviderFactory = new CryptoProviderFactory { CacheSignatureProviders = false } } : key;
        return new JsonWebTokenHandler().CreateToken(new SecurityTokenDescriptor
        {
            Issuer = Address, Audience = ClientId, Expires = DateTime.UtcNow.AddMinutes(5),
            Subject = new ClaimsIdentity([new("sub", Subject), new("nonce", nonce), new("preferred_username", PreferredName), .. Groups.Select(group => new Claim("groups", group))]),
            SigningCredentials = new SigningCredentials(signing, SecurityAlgorithms.RsaSha256),
        });
    }
}
